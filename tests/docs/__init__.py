"""What the pages under docs/ show is done here: commands run, pieces of a house file put in place, answers compared."""
