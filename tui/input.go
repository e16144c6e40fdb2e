package tui

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/rivo/uniseg"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/tui/cell"
)

// longestText bounds what a field takes, in characters.
const longestText = 500

// input is a line of text being typed. What stands in it at first is replaced
// by the first character typed, so that gloves need not erase.
type input struct {
	text   string
	number bool                 // digits, comma and point alone
	fresh  bool                 // still as it was given
	exact  entry.Maybe[float64] // the number that was given, in the unit of the program
}

func prefilled(text string, number bool) input { return input{text: text, number: number, fresh: true} }

// prefilledWith is a field with a number in the person's unit. As long as it is
// left as it stands it is the very number that was given.
func prefilledWith(u words.Units, v entry.Maybe[float64], unit string) input {
	in := prefilled("", true)
	if v.Known {
		in.text, in.exact = plainNumber(v.Value), v
		if shown := u.Shown(v.Value, unit); shown != v.Value {
			in.text = words.Number(shown, 2)
		}
	}
	return in
}

// plainNumber is a number in as many decimals as it has.
func plainNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// typed takes one key or paste. It says whether it was of any use.
func (in input) typed(k tea.KeyMsg) (input, bool) {
	switch k.Type {
	case tea.KeyBackspace, tea.KeyDelete:
		in.fresh = false
		in.text = withoutLast(in.text)
		return in, true
	case tea.KeySpace, tea.KeyRunes:
	default:
		return in, false
	}
	add := cell.Clean(string(k.Runes))
	if in.number {
		add = strings.Map(figureOf, add)
	}
	if add == "" || k.Alt {
		return in, false
	}
	if in.fresh {
		in.text, in.fresh = "", false
	}
	if room := longestText - len([]rune(in.text)); room < len([]rune(add)) {
		add = string([]rune(add)[:max(room, 0)])
	}
	in.text += add
	return in, add != ""
}

// withoutLast drops the last character as it is seen.
func withoutLast(s string) string {
	end := 0
	for g := uniseg.NewGraphemes(s); g.Next(); {
		end, _ = g.Positions()
	}
	return s[:end]
}

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

// digit is the digit that a key stands for, or nothing.
func digit(k typed) string {
	s := strings.Map(figureOf, string(k))
	if len(s) == 1 && s[0] >= '0' && s[0] <= '9' {
		return s
	}
	return ""
}

// value reads a number with a comma or a point in the person's unit, between two
// limits, and gives it in the program's. The error is a sentence for the screen.
func (in input) value(u words.Units, l limits) (float64, error) {
	if in.fresh && in.exact.Known {
		return in.exact.Value, nil
	}
	unit := u.Name(l.unit)
	s := strings.ReplaceAll(strings.TrimSpace(in.text), ",", ".")
	v, err := strconv.ParseFloat(s, 64)
	metric := u.Metric(v, l.unit)
	switch {
	case s == "":
		return 0, errors.New(words.NumberMissing(unit))
	case err != nil || math.IsNaN(v) || math.IsInf(v, 0):
		return 0, errors.New(words.NoNumber(in.text))
	case metric < l.least || metric > l.most:
		return 0, errors.New(words.OutOfRange(in.text, unit, u.Shown(l.least, l.unit), u.Shown(l.most, l.unit)))
	}
	return metric, nil
}

// clockTime reads a time of day: 14:32, 14.32, 1432. It is the last such time
// before now, which may be yesterday's.
func clockTime(text string, now time.Time) (time.Time, error) {
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

// trimmed is the text without the blanks around it.
func (in input) trimmed() string { return strings.TrimSpace(in.text) }
