"""Texts in another language, and figures and dates as the place writes them.

The lowest room: every other one speaks through it. It knows no framework, so that the reminder
service, which has no window, speaks the same language.
"""
