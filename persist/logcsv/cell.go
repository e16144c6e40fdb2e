package logcsv

import "strings"

// A table program may take a cell that begins like this for a formula and run it.
const formulaSigns = "=+-@\t\r"

// quoted tells whether a note begins like a formula, or like one that was made
// harmless already.
func quoted(note string) bool {
	rest := strings.TrimLeft(note, "'")
	return rest != "" && strings.ContainsRune(formulaSigns, rune(rest[0]))
}

// Harmless is a note as a cell that no table program takes for a formula, without
// the marks that turn the direction of what stands after them.
func Harmless(note string) string {
	note = strings.Map(func(r rune) rune {
		if r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069 || r == 0x200E || r == 0x200F || r == 0x061C {
			return -1
		}
		return r
	}, note)
	if quoted(note) {
		return "'" + note
	}
	return note
}

// asNoted undoes Harmless.
func asNoted(cell string) string {
	if strings.HasPrefix(cell, "'") && quoted(cell[1:]) {
		return cell[1:]
	}
	return cell
}
