"""The whole job: where the layers meet, what is found wrong, what to do and what to buy."""
