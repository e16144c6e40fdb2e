package tui

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/words"
)

func TestNumbers(t *testing.T) {
	for _, c := range []struct {
		typed string
		want  float64
		bad   string
	}{
		{"1.9", 1.9, ""}, {"1,9", 1.9, ""}, {"720", 720, ""}, {".5", 0.5, ""}, {"5.", 5, ""}, {"0", 0, ""}, {"007", 7, ""},
		{"", 0, "no number yet"}, {"1,9,2", 0, "is no number"}, {".", 0, "is no number"}, {"1:2", 0, "is no number"},
		{"1001", 0, "between 0 and 1000 kg"}, {strings.Repeat("9", 400), 0, "is no number"},
	} {
		v, err := input{text: c.typed, number: true}.value(words.Units{}, limits{"kg", 0, 1000})
		switch {
		case c.bad == "" && (err != nil || v != c.want):
			t.Errorf("%q: %v, %v; want %v", c.typed, v, err, c.want)
		case c.bad != "" && (err == nil || !strings.Contains(err.Error(), c.bad)):
			t.Errorf("%q: %v, %v; want an error with %q", c.typed, v, err, c.bad)
		}
	}
}

// On AZERTY the digits stand above; unshifted the row types signs and accented
// letters. Pressed from left to right it reads 1 to 9 and 0.
func TestTopRowOfAZERTY(t *testing.T) {
	in := input{number: true}
	for k := range strings.FieldsSeq(strings.TrimSuffix(keyboards["AZERTY"][0], " ) = backspace")) {
		in, _ = in.typed(keyMsg(k))
	}
	if in.text != "1234567890" {
		t.Errorf("the row reads %q", in.text)
	}
	// In words they stay what they are.
	in, _ = input{}.typed(keyMsg("é"))
	if in.text != "é" {
		t.Errorf("in words é became %q", in.text)
	}
	if digit(typedOf(keyMsg("è"))) != "7" {
		t.Error("è does not choose the seventh line of a list")
	}
}

func TestTyping(t *testing.T) {
	in := prefilled("12", true)
	if in, _ = in.typed(keyMsg("7")); in.text != "7" {
		t.Errorf("the first digit should replace what was given: %q", in.text)
	}
	in = prefilled("12", true)
	if in, _ = in.typed(keyMsg("backspace")); in.text != "1" {
		t.Errorf("backspace should take one character: %q", in.text)
	}
	in = input{text: "eu\u0301"} // an e, and a u with a combining mark
	if in, _ = in.typed(keyMsg("backspace")); in.text != "e" {
		t.Errorf("backspace should take what is seen as one: %q", in.text)
	}
	if _, used := in.typed(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'x'}, Alt: true}); used {
		t.Error("a chord was typed")
	}
	in, _ = input{}.typed(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("a\x1b[31mb\u200b\n" + strings.Repeat("c", 2*longestText)), Paste: true})
	if strings.ContainsAny(in.text, "\x1b\n\u200b") || len(in.text) != longestText {
		t.Errorf("a paste became %d characters %q", len(in.text), in.text[:12])
	}
	if in, _ = (input{number: true}).typed(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(" 7 2 0 "), Paste: true}); in.text != "720" {
		t.Errorf("a pasted number is %q", in.text)
	}
}

func TestClockTime(t *testing.T) {
	now := time.Date(2026, 5, 9, 14, 30, 0, 0, time.FixedZone("", 7200))
	for typed, want := range map[string]string{
		"14:05": "9 14:05", "1405": "9 14:05", "14.05": "9 14:05", "14,05": "9 14:05", "905": "9 09:05", "9:05": "9 09:05",
		"23:50": "8 23:50", "14:31": "9 14:31", "0005": "9 00:05",
	} {
		at, err := clockTime(typed, now)
		if got := at.Format("2 15:04"); err != nil || got != want {
			t.Errorf("%s: %s %v, want %s", typed, got, err, want)
		}
	}
	for _, typed := range []string{"", "25:00", "12:60", "12:5", "::", "1", "12:00:00", "99999"} {
		if at, err := clockTime(typed, now); err == nil {
			t.Errorf("%q became %v", typed, at)
		}
	}
}
