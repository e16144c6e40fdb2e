// Package theme holds how things look: roles instead of colours, for each kind
// of terminal, dark and light, with full drawing or in ASCII.
//
// Nothing is said by colour alone. Whatever a colour says also has a mark or a
// pattern (Marks), and there is no green, so no pair of red and green. A theme
// is a value made once and handed down.
package theme
