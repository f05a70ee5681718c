"""Turns a plan into what is sent to each group: messages, pictures, reminders."""
