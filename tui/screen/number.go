package screen

import (
	"errors"
	"math"
	"regexp"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	modelwords "chargehand/model/words"
	"chargehand/tui/words"
)

// Limits are the least and the most of a quantity that a field takes. They are
// there to catch a slip of the finger, and wider than any small furnace.
type Limits struct {
	Unit        string
	Least, Most float64
}

// thousands is a number of which nobody can tell whether the comma parts off
// thousands or decimals.
var thousands = regexp.MustCompile(`^[1-9][0-9]{0,2},[0-9]{3}$`)

// plainNumber is a number in as many decimals as it has.
func plainNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// topRow is the unshifted top row of an AZERTY keyboard, which counts as
// digits where digits are wanted.
var topRow = map[rune]rune{'&': '1', 'é': '2', '"': '3', '\'': '4', '(': '5', '-': '6', 'è': '7', '_': '8', 'ç': '9', 'à': '0'}

// figureOf is a character of a number, or nothing.
func figureOf(c rune) rune {
	if d, ok := topRow[c]; ok {
		return d
	}
	if c >= '0' && c <= '9' || c == '.' || c == ',' || c == ':' {
		return c
	}
	return -1
}

// Digit is the digit that a key stands for, or nothing.
func Digit(k Typed) string {
	if utf8.RuneCountInString(string(k)) != 1 { // the name of a key is none
		return ""
	}
	s := strings.Map(figureOf, string(k))
	if len(s) == 1 && s[0] >= '0' && s[0] <= '9' {
		return s
	}
	return ""
}

// Value reads a number with a comma or a point in the person's unit, between two
// limits, and gives it in the program's. The error is a sentence for the screen.
func (in Input) Value(u modelwords.Units, l Limits) (float64, error) {
	if in.fresh && in.exact.Known {
		return in.exact.Value, nil
	}
	unit := u.Name(l.Unit)
	if t := in.Trimmed(); thousands.MatchString(t) {
		return 0, errors.New(words.Ambiguous(t, strings.ReplaceAll(t, ",", ""), strings.TrimRight(strings.ReplaceAll(t, ",", "."), "0")+"0"))
	}
	s := strings.ReplaceAll(in.Trimmed(), ",", ".")
	v, err := strconv.ParseFloat(s, 64)
	metric := u.Metric(v, l.Unit)
	switch {
	case s == "":
		return 0, errors.New(words.NumberMissing(unit))
	case err != nil || math.IsNaN(v) || math.IsInf(v, 0):
		return 0, errors.New(words.NoNumber(in.Text()))
	case metric < l.Least || metric > l.Most:
		return 0, errors.New(words.OutOfRange(in.Text(), unit, u.Shown(l.Least, l.Unit), u.Shown(l.Most, l.Unit)))
	}
	return metric, nil
}

// ClockTime reads a time of day: 14:32, 14.32, 1432. It is the last such time
// before now, which may be yesterday's.
func ClockTime(text string, now time.Time) (time.Time, error) {
	s := strings.TrimSpace(text)
	h, m, cut := strings.Cut(strings.NewReplacer(".", ":", ",", ":").Replace(s), ":")
	if !cut && len(s) > 2 {
		h, m = s[:len(s)-2], s[len(s)-2:]
	}
	hour, err1 := strconv.Atoi(h)
	minute, err2 := strconv.Atoi(m)
	if err1 != nil || err2 != nil || hour < 0 || hour > 23 || minute < 0 || minute > 59 || len(m) != 2 {
		return time.Time{}, errors.New(words.NoTime(text))
	}
	t := time.Date(now.Year(), now.Month(), now.Day(), hour, minute, 0, 0, now.Location())
	if t.After(now.Add(time.Minute)) {
		t = t.AddDate(0, 0, -1)
	}
	return t, nil
}
