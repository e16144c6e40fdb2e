package tui

import (
	"reflect"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/words"
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

func keymaps() map[screenID]keymap {
	m := New(Config{NewUID: func() string { return "u" }, Start: noon})
	maps := map[screenID]keymap{}
	for id, s := range m.screens {
		maps[id] = s.keys()
	}
	return maps
}

func TestEveryBindingIsListed(t *testing.T) {
	for id, km := range keymaps() {
		listed := map[string]bool{}
		for _, b := range km.all() {
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
		bs := append(km.all(), global.all()...)
		if id == lightScreen { // letters are typed there, and its esc is the global one
			bs = append(km.all(), global.Leave, global.HelpTyping)
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
		for _, b := range km.all() {
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

// allChoices are the lists that can be reached, by their titles.
func allChoices(t *testing.T) map[string]choice {
	t.Helper()
	d := practising(t)
	d.press("c")
	sh := d.m.shared()
	found := map[string]choice{}
	var walk func(st step)
	walk = func(st step) {
		c, ok := st.ask.(choice)
		if f, isField := st.ask.(field); isField {
			for _, o := range f.instead {
				walk(o.then(sh))
			}
			for _, typed := range []string{"12", "words"} {
				if next, err := f.done(sh, input{text: typed, number: f.input.number}); err == nil {
					walk(next)
				}
			}
		}
		if !ok || len(found[c.title].options) > 0 {
			return
		}
		found[c.title] = c
		for _, o := range c.options {
			walk(o.then(sh))
		}
	}
	walk(others(sh))
	walk(views(sh))
	walk(leaveUnkept(sh))
	walk(journal{}.askFilter())
	last, _ := sh.smelt.LastAct()
	walk(askAmend(sh, last))
	for _, a := range fireActs {
		walk(a.ask(sh, nil, book))
	}
	walk(askWeigh(sh, nil, book))
	return found
}

func TestListsHaveOneMeaningPerKey(t *testing.T) {
	lists := allChoices(t)
	if len(lists) < 15 {
		t.Fatalf("only %d lists found: the walk is broken", len(lists))
	}
	for title, c := range lists {
		seen := map[string]string{}
		for _, o := range c.options {
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
	d := practising(t)
	for _, a := range fireActs {
		f, ok := a.ask(d.m.shared(), nil, book).ask.(field)
		if !ok {
			continue
		}
		for _, o := range f.instead {
			if _, used := f.input.typed(keyMsg(o.Keys()[0])); used {
				t.Errorf("field %q: %s is typed, and leads to %q", f.label, o.Keys()[0], o.Help().Desc)
			}
		}
	}
}

func TestEveryKeyIsInTheHelp(t *testing.T) {
	for id, km := range keymaps() {
		sh := shared{w: 80, h: 24, behind: id, behindKeys: km}
		var b strings.Builder
		for _, l := range helpLines(sh) {
			b.WriteString(l.name + "\t" + l.text + "\n")
		}
		all := append(km.all(), global.all()...)
		if id == fireScreen {
			for _, o := range otherOptions() {
				all = append(all, o.Binding)
			}
		}
		for _, bind := range all {
			if !strings.Contains(b.String(), allKeys(bind)+"\t"+bind.Help().Desc) {
				t.Errorf("help of %s lacks %s: %s", id, allKeys(bind), bind.Help().Desc)
			}
		}
	}
}

// Words that name a key must name the key that does it.
func TestWordsNameTheRightKeys(t *testing.T) {
	d := practising(t)
	d.press("c")
	letter := func(st step, word string) string {
		for _, o := range st.ask.(choice).options {
			if o.Help().Desc == word {
				return o.Help().Key
			}
		}
		t.Fatalf("nothing does %q", word)
		return ""
	}
	rare, view := fireMap.Rare.Help().Key+" then ", global.Views.Help().Key+" then "
	sh := d.m.shared()
	for _, c := range []struct{ says, names string }{
		{words.NoRecipe, rare + letter(others(sh), words.DoByWeight)},
		{words.ByWeightOnly, rare + letter(others(sh), words.DoByWeight)},
		{words.NoOreMeasure, rare + letter(others(sh), words.DoWeighed)},
		{words.NoCharcoalMeasure, rare + letter(others(sh), words.DoWeighed)},
		{words.NoSmelt, view + letter(views(sh), words.DoShelf)},
		{words.ShelfBare, view + letter(views(sh), words.DoStart)},
		{words.IfDouble, fireMap.CrossOut.Help().Key + " crosses it out"},
		{words.NoEntryHere, journalMap.Filter.Help().Key + " shows another kind"},
		{words.LookOnly, global.Back.Help().Key + " goes back"},
		{words.NowhereBack, global.Views.Help().Key + " shows the other screens"},
		{words.NoAct("x"), global.Help.Help().Key + " shows the keys"},
	} {
		if !strings.Contains(c.says, c.names) {
			t.Errorf("%q should name %q", c.says, c.names)
		}
	}
}
