"""What `signgen explain` knows: options, words of the trade, checks, common questions, recipes, and the sign file."""
