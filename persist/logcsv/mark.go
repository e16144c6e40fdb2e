package logcsv

import (
	"slices"
	"strings"

	"chargehand/model/entry"
)

// marked begins the remark at the head of a log that counts for nothing; the words
// after it, parted by commas, say why.
const marked = "counts for nothing: "

// The words of that remark.
const (
	markPractice  = "practice"
	markRehearsal = "rehearsal"
	markInvented  = "invented"
)

// markOf is why the smelt of a light counts for nothing, "" where it counts.
func markOf(l entry.Light) string {
	var said []string
	if l.Practice {
		said = append(said, markPractice)
	}
	if l.Rehearsal {
		said = append(said, markRehearsal)
	}
	if l.Invented {
		said = append(said, markInvented)
	}
	return strings.Join(said, ", ")
}

// mark reads such a remark into a light. It tells whether the text is one: whole, with
// words that it knows.
func mark(text string, l *entry.Light) bool {
	rest, ok := strings.CutPrefix(text, marked)
	if !ok {
		return false
	}
	said := strings.Split(rest, ",")
	for i, s := range said {
		said[i] = strings.TrimSpace(s)
		if !slices.Contains([]string{markPractice, markRehearsal, markInvented}, said[i]) {
			return false
		}
	}
	l.Practice = l.Practice || slices.Contains(said, markPractice)
	l.Rehearsal = l.Rehearsal || slices.Contains(said, markRehearsal)
	l.Invented = l.Invented || slices.Contains(said, markInvented)
	return true
}
