"""The pages people work from, each made for one pair of hands: to print, not to type into."""
