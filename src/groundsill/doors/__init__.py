"""The way in and out: JSON documents checked against the survey's own classes, and the schemas that describe them.

Pydantic is used here and above, never below. A document is read whole or refused with one numbered line for each fault:
field path, value, what is allowed. Unknown fields are refused by name; a file is replaced only by an atomic rename; no
NaN or infinity goes in or out.

`text` bytes to plain maps · `decode` maps to a house · `faults` what was wrong, in words · `encode` a house to text ·
`files` on disk and in zips · `schema` the published form of a house file · the other modules: answers for ``--json``.
"""
