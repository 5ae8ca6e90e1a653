"""The reference for users as one page, made from the code: every command, option, key, file, exit code, check and word,
with pictures of what there is to choose from. `signgen explain --all --out FILE` writes it."""
