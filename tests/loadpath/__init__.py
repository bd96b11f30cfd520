"""The load path: chains, links, verdicts, headlines, and the laws they keep whatever the house."""
