package tui

import (
	"slices"
	"strings"
	"time"
	"unicode"
)

// SmeltID names a new smelt: the day, the furnace and the first letter that no
// smelt taken of that day and furnace has, as 2026-05-09-reedhollow-a. The zero
// time is a day that nobody knows.
func SmeltID(lit time.Time, furnace string, taken []string) string {
	day := lit.Format(time.DateOnly)
	if lit.IsZero() {
		day = "undated"
	}
	stem := day + "-" + slug(furnace) + "-"
	for n := 0; ; n++ {
		if id := stem + letters(n); !slices.Contains(taken, id) {
			return id
		}
	}
}

// slug is a name in the letters and digits that a file name may always hold.
func slug(name string) string {
	var b strings.Builder
	for _, c := range strings.ToLower(name) {
		switch {
		case c >= 'a' && c <= 'z' || c >= '0' && c <= '9':
			b.WriteRune(c)
		case spelled[c] != "":
			b.WriteString(spelled[c])
		case unicode.IsLetter(c):
			b.WriteByte('x')
		}
		if b.Len() >= 40 {
			break
		}
	}
	if b.Len() == 0 {
		return "furnace"
	}
	return b.String()
}

// spelled writes the letters of the neighbouring languages in plain ones.
var spelled = map[rune]string{
	'ä': "ae", 'ö': "oe", 'ü': "ue", 'ß': "ss", 'å': "aa", 'æ': "ae", 'ø': "oe", 'œ': "oe", 'þ': "th", 'ð': "d",
	'é': "e", 'è': "e", 'ê': "e", 'ë': "e", 'à': "a", 'â': "a", 'á': "a", 'ã': "a", 'ç': "c", 'î': "i", 'ï': "i",
	'í': "i", 'ô': "o", 'ó': "o", 'õ': "o", 'ù': "u", 'û': "u", 'ú': "u", 'ý': "y", 'ñ': "n", 'ś': "s", 'š': "s",
	'č': "c", 'ć': "c", 'ł': "l", 'ń': "n", 'ř': "r", 'ž': "z", 'ź': "z", 'ż': "z", 'ě': "e", 'ę': "e", 'ą': "a",
}

// letters counts a, b ... z, aa, ab ...
func letters(n int) string {
	s := string(rune('a' + n%26))
	if n >= 26 {
		return letters(n/26-1) + s
	}
	return s
}
