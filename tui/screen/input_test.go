package screen

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	modelwords "chargehand/model/words"
	"chargehand/tui/keyboards"
)

func TestNumbers(t *testing.T) {
	for _, c := range []struct {
		typed string
		want  float64
		bad   string
	}{
		{"1.9", 1.9, ""}, {"1,9", 1.9, ""}, {"720", 720, ""}, {".5", 0.5, ""}, {"5.", 5, ""}, {"0", 0, ""}, {"007", 7, ""},
		{"", 0, "type it in kg"}, {"1,9,2", 0, "is no number"}, {".", 0, "is no number"}, {"1:2", 0, "is no number"},
		{"1001", 0, "type 0 to 1000 kg"}, {strings.Repeat("9", 400), 0, "is no number"},
	} {
		v, err := Prefilled(c.typed, true).Value(modelwords.Units{}, Limits{Unit: "kg", Most: 1000})
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
	in := NewInput(true)
	for k := range strings.FieldsSeq(strings.TrimSuffix(keyboards.Keyboards["AZERTY"][0], " ) = backspace")) {
		in, _ = in.Typed(keyMsg(k))
	}
	if in.Text() != "1234567890" {
		t.Errorf("the row reads %q", in.Text())
	}
	// In words they stay what they are.
	in, _ = NewInput(false).Typed(keyMsg("é"))
	if in.Text() != "é" {
		t.Errorf("in words é became %q", in.Text())
	}
	if Digit(TypedOf(keyMsg("è"))) != "7" {
		t.Error("è does not choose the seventh line of a list")
	}
}

func TestTyping(t *testing.T) {
	in := Prefilled("12", true)
	if in, _ = in.Typed(keyMsg("7")); in.Text() != "7" {
		t.Errorf("the first digit should replace what was given: %q", in.Text())
	}
	in = Prefilled("12", true)
	if in, _ = in.Typed(keyMsg("backspace")); in.Text() != "1" {
		t.Errorf("backspace should take one character: %q", in.Text())
	}
	in = Prefilled("eu\u0301", false) // an e, and a u with a combining mark
	if in, _ = in.Typed(keyMsg("backspace")); in.Text() != "e" {
		t.Errorf("backspace should take what is seen as one: %q", in.Text())
	}
	if _, used := in.Typed(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'x'}, Alt: true}); used {
		t.Error("a chord was typed")
	}
	in, _ = NewInput(false).Typed(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("a\x1b[31mb\u200b\n" + strings.Repeat("c", 2*longestText)), Paste: true})
	if strings.ContainsAny(in.Text(), "\x1b\n\u200b") || len(in.Text()) != longestText {
		t.Errorf("a paste became %d characters %q", len(in.Text()), in.Text()[:12])
	}
	if in, _ = NewInput(true).Typed(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(" 7 2 0 "), Paste: true}); in.Text() != "720" {
		t.Errorf("a pasted number is %q", in.Text())
	}
}

func TestClockTime(t *testing.T) {
	now := time.Date(2026, 5, 9, 14, 30, 0, 0, time.FixedZone("", 7200))
	for typed, want := range map[string]string{
		"14:05": "9 14:05", "1405": "9 14:05", "14.05": "9 14:05", "14,05": "9 14:05", "905": "9 09:05", "9:05": "9 09:05",
		"23:50": "8 23:50", "14:31": "9 14:31", "0005": "9 00:05",
	} {
		at, err := ClockTime(typed, now)
		if got := at.Format("2 15:04"); err != nil || got != want {
			t.Errorf("%s: %s %v, want %s", typed, got, err, want)
		}
	}
	for _, typed := range []string{"", "25:00", "12:60", "12:5", "::", "1", "12:00:00", "99999"} {
		if at, err := ClockTime(typed, now); err == nil {
			t.Errorf("%q became %v", typed, at)
		}
	}
}

// keyMsg is a key as the library sends it.
func keyMsg(k string) tea.KeyMsg {
	for t, name := range map[tea.KeyType]string{
		tea.KeyBackspace: "backspace", tea.KeyDelete: "delete", tea.KeyLeft: "left", tea.KeyRight: "right", tea.KeyHome: "home", tea.KeyEnd: "end",
	} {
		if name == k {
			return tea.KeyMsg{Type: t}
		}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
}
