"""Turns each garment's designs into decals: closed outlines at their final size, in mm."""
