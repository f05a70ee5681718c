"""Turns garments, film needs and hours into what to buy, and what each garment costs."""
