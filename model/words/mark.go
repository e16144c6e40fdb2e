package words

import (
	"strings"

	"chargehand/model/entry"
)

// Mark says why a smelt counts for nothing: it was practice, a rehearsal, invented, or
// several of these. Nothing for a smelt that counts.
func Mark(l entry.Light) string {
	var said []string
	for _, m := range []struct {
		is   bool
		word string
	}{{l.Practice, "practice"}, {l.Rehearsal, "rehearsal"}, {l.Invented, "invented"}} {
		if m.is {
			said = append(said, m.word)
		}
	}
	return strings.Join(said, ", ")
}

// Marked is the name of a smelt with its mark, as Mark says it.
func Marked(name, mark string) string {
	if mark == "" {
		return name
	}
	return name + " (" + mark + ")"
}
