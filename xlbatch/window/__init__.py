"""The window for people who do not use a console. One view or one concern a module."""
