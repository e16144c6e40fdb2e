package tui_test

import (
	"reflect"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/tui"
	"chargehand/tui/book"
	"chargehand/tui/desk"
	"chargehand/tui/fire"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// bindingsOf walks a key map for every binding in it.
func bindingsOf(v reflect.Value) []key.Binding {
	var bs []key.Binding
	for i := range v.NumField() {
		switch f := v.Field(i); {
		case f.Type() == reflect.TypeFor[key.Binding]():
			bs = append(bs, f.Interface().(key.Binding))
		case f.Kind() == reflect.Struct:
			bs = append(bs, bindingsOf(f)...)
		}
	}
	return bs
}

func keymaps() map[screen.ID]screen.KeyMap {
	m := tui.New(tui.Config{NewUID: func() string { return "u" }, Start: desk.Noon})
	maps := map[screen.ID]screen.KeyMap{}
	for _, id := range m.Screens() {
		maps[id] = m.Screen(id).Keys()
	}
	return maps
}

func TestEveryBindingIsListed(t *testing.T) {
	for id, km := range keymaps() {
		listed := map[string]bool{}
		for _, b := range km.All() {
			listed[strings.Join(b.Keys(), " ")] = true
		}
		for _, b := range bindingsOf(reflect.ValueOf(km)) {
			if !listed[strings.Join(b.Keys(), " ")] {
				t.Errorf("%s: %v (%s) is in no list", id, b.Keys(), b.Help().Desc)
			}
			if b.Help().Desc == "" || b.Help().Key == "" {
				t.Errorf("%s: %v has no words", id, b.Keys())
			}
		}
	}
}

func TestNoKeyHasTwoMeanings(t *testing.T) {
	for id, km := range keymaps() {
		seen := map[string]string{}
		bs := append(km.All(), screen.Global.All()...)
		if id == screen.Light { // letters are typed there, and its esc is the global one
			bs = append(km.All(), screen.Global.Leave, screen.Global.HelpTyping)
		}
		for _, b := range bs {
			for _, k := range b.Keys() {
				if other, twice := seen[k]; twice {
					t.Errorf("%s: %s is both %q and %q", id, k, other, b.Help().Desc)
				}
				seen[k] = b.Help().Desc
			}
		}
	}
}

func TestNoChords(t *testing.T) {
	for id, km := range keymaps() {
		for _, b := range km.All() {
			for _, k := range b.Keys() {
				for _, held := range []string{"shift+", "alt+", "ctrl+"} {
					if strings.HasPrefix(k, held) && k != "shift+tab" {
						t.Errorf("%s: %s needs two keys at once", id, k)
					}
				}
				if k != strings.ToLower(k) {
					t.Errorf("%s: %s can never match, keys are matched in small letters", id, k)
				}
			}
		}
	}
}

// allDialogs are the lists and fields that can be reached, by their titles.
func allDialogs(t *testing.T) (map[string]screen.Choice, map[string]screen.Field) {
	t.Helper()
	lists, fields := map[string]screen.Choice{}, map[string]screen.Field{}
	for _, p := range everywhere(t) {
		switch c, list, f, field := p.asks(); {
		case list && len(lists[c.Title].Options) == 0:
			lists[c.Title] = c
		case field && fields[f.Label].Done == nil:
			fields[f.Label] = f
		}
	}
	return lists, fields
}

func TestListsHaveOneMeaningPerKey(t *testing.T) {
	lists, _ := allDialogs(t)
	if len(lists) < 15 {
		t.Fatalf("only %d lists found: the walk is broken", len(lists))
	}
	for title, c := range lists {
		seen := map[string]string{}
		for _, o := range c.Options {
			for _, k := range o.Keys() {
				if other, twice := seen[k]; twice {
					t.Errorf("list %q: %s is both %q and %q", title, k, other, o.Help().Desc)
				}
				seen[k] = o.Help().Desc
				if k == "esc" || k == "up" || k == "down" || k >= "0" && k <= "9" {
					t.Errorf("list %q: %s is taken by the list itself", title, k)
				}
			}
		}
	}
}

// A field's letters that lead elsewhere must not be characters it takes.
func TestFieldLettersAreNotTyped(t *testing.T) {
	_, fields := allDialogs(t)
	if len(fields) < 15 {
		t.Fatalf("only %d fields found: the walk is broken", len(fields))
	}
	for label, f := range fields {
		for _, o := range f.Instead {
			if _, used := f.Input.Typed(desk.KeyMsg(o.Keys()[0])); used {
				t.Errorf("field %q: %s is typed, and leads to %q", label, o.Keys()[0], o.Help().Desc)
			}
		}
	}
}

// Words that name a key must name the key that does it.
func TestWordsNameTheRightKeys(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c")
	letter := func(opens, word string) string {
		d.Press(strings.Fields(opens)...)
		defer d.Press("esc")
		for _, o := range d.M.Dialog().(screen.Choice).Options {
			if o.Help().Desc == word {
				return o.Help().Key
			}
		}
		t.Fatalf("nothing does %q", word)
		return ""
	}
	rare, view := fire.Map.Rare.Help().Key+", ", screen.Global.Views.Help().Key+" then "
	for _, c := range []struct{ says, names string }{
		{words.NoRecipe, rare + letter("o", words.DoByWeight) + ", " + letter("o r", words.DoNextByWeight)},
		{words.ByWeightOnly, rare + letter("o", words.DoByWeight) + ", " + letter("o r", words.DoNextByWeight)},
		{words.NoOreMeasure, rare + letter("o", words.DoByWeight) + ", " + letter("o r", words.DoWeighed)},
		{words.NoCharcoalMeasure, rare + letter("o", words.DoByWeight) + ", " + letter("o r", words.DoWeighed)},
		{words.NoSmelt, view + letter("v", words.DoShelf)},
		{words.ShelfBare, view + letter("v", words.DoStart)},
		{words.IfDouble, fire.Map.CrossOut.Help().Key + " crosses it out"},
		{words.NoEntryHere, book.Map.Filter.Help().Key + " shows another kind"},
		{words.LookOnly, screen.Global.Back.Help().Key + " goes back"},
		{words.NowhereBack, screen.Global.Views.Help().Key + " shows the other screens"},
		{words.NoAct("x"), screen.Global.Help.Help().Key + " shows the keys"},
	} {
		if !strings.Contains(c.says, c.names) {
			t.Errorf("%q should name %q", c.says, c.names)
		}
	}
}
