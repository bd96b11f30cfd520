"""Whole journeys through the program, as the people who use it make them."""
