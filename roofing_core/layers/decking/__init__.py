"""The deck: panels on their supports, and how they are cut."""
