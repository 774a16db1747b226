"""The whole job: where the layers meet, what is found wrong, what to do in which order and to buy."""
