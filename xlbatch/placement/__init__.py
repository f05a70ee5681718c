"""Turns garments and decals into placements: where on the garment each decal goes."""
