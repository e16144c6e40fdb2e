package main

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

// reading gives reads to a pasteMarks and what it makes of all of them.
func reading(reads ...string) string {
	var m pasteMarks
	var all bytes.Buffer
	at := time.Date(2026, 5, 9, 10, 0, 0, 0, time.UTC)
	for i, r := range reads {
		p := make([]byte, 256)
		n := m.mark(p, copy(p, r), at, func() bool { return i+1 < len(reads) })
		all.Write(p[:n])
		at = at.Add(time.Millisecond)
	}
	return all.String()
}

func TestWhatNoHandTypesIsMarkedAsAPaste(t *testing.T) {
	text := strings.Repeat("the slag ran well, brown and quick; ", 6)
	begins, ends := string(pasteBegins), string(pasteEnds)
	for _, c := range []struct {
		name        string
		reads, want []string
	}{
		{"a line at once", []string{text}, []string{begins, text, ends}},
		{"a page in several reads, the last one short", []string{text, text, "end.\r"}, []string{begins, text, text, "end.\r", ends}},
		{"one that comes in small reads, from where it is more than a hand types", []string{text[:40], text[40:90], "more"}, []string{text[:40], begins, text[40:90], "more", ends}},
		{"thirty keys of a stall", []string{"csssb720\rcsssnwet\rtcsssrucsss"}, []string{"csssb720\rcsssnwet\rtcsssrucsss"}},
		{"a key held down through a stall", []string{strings.Repeat("s", 200)}, []string{strings.Repeat("s", 200)}},
		{"two hands on few keys through a long stall", []string{strings.Repeat("csfbtrlu70", 20)}, []string{strings.Repeat("csfbtrlu70", 20)}},
		{"arrows held down", []string{strings.Repeat("\x1b[A", 80)}, []string{strings.Repeat("\x1b[A", 80)}},
		{"leaving", []string{text + "\x03"}, []string{text, "\x03"}},
		{"marked by the terminal", []string{begins + text, text, "end" + ends}, []string{begins, text, text, "end", ends}},
		{"marked by the terminal, its marks cut", []string{begins[:3], begins[3:] + text, text + ends[:2], ends[2:] + "c"}, []string{begins, text, text, ends, "c"}},
	} {
		if got, want := reading(c.reads...), strings.Join(c.want, ""); got != want {
			t.Errorf("%s: %q, want %q", c.name, got, want)
		}
	}
}
