"""Does this coating hold on this surface."""
