"""Open fonts that ship with signgen; `catalogue.toml` lists them."""
