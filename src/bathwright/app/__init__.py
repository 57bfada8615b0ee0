"""One function per thing that a person can ask for. The only room that ties the others together."""
