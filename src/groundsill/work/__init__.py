"""Pieces of work and the house document.

`pieces` what is laid on a survey to make a design, as plain data · `apply` the survey with the pieces laid on it ·
`document` the house file: survey, choices, alternatives, record of the work · `basis` the editions it goes by.
"""
