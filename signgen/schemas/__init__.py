"""What signgen writes for other programs, as JSON Schemas: each format is a frozen value here, from which its schema is
generated, and by which `msgspec.json.decode(text, type=Report)` reads it. A format's version changes when a key is
taken away or comes to mean something else; keys may be added."""
