// Package shaft paints the furnace in section: the burden glowing by its heat,
// each material with a texture of its own, the tuyere with its blast, slag and
// bloom in the hearth, the clay around them. It is true to scale in height and,
// while there is room, across.
//
// Heat is the only thing in it that has colour (package glow). What it draws
// rests on the geometry of package picture; what is not known is hatched and has
// no level. Where colours are few each half of a cell cannot have its own, and
// the same picture is drawn in shades, patterns or ASCII, one a cell.
package shaft
