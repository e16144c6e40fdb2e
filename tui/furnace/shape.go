package furnace

import (
	"cmp"
	"errors"
	"slices"
	"strconv"
	"strings"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// bores asks for the bore at several heights above the tuyere, in one line: pairs of a
// height and a bore in cm. None takes them away again.
func bores(u modelwords.Units, f entry.Furnace) screen.Effect {
	return asked(words.BoresAsked, words.BoresTyped(f.Bores), func(text string) (screen.Effect, error) {
		next := f
		next.Bores = nil
		for _, pair := range strings.Split(text, ",") {
			n, err := numbers(pair)
			switch {
			case strings.TrimSpace(pair) == "":
				continue
			case err != nil || len(n) != 2 || n[0] < 0 || n[0] > 500 || n[1] < 5 || n[1] > 500:
				return nil, errors.New(words.BoresWrong)
			}
			next.Bores = append(next.Bores, entry.BoreAt{At: entry.Centimetre(n[0]), Bore: entry.Centimetre(n[1])})
		}
		slices.SortFunc(next.Bores, func(a, b entry.BoreAt) int { return cmp.Compare(a.At, b.At) })
		for i := 1; i < len(next.Bores); i++ {
			if next.Bores[i].At == next.Bores[i-1].At {
				return nil, errors.New(words.BoresTwice)
			}
		}
		if n := len(next.Bores); n > 0 {
			next.Bore, next.BoreTop = entry.Some(next.Bores[0].Bore), entry.Some(next.Bores[n-1].Bore)
		}
		return sizes(u, next), nil
	})
}

// recipe asks what the wall is made of: a name and its parts by volume, one after the
// other.
func recipe(u modelwords.Units, f entry.Furnace) screen.Effect {
	return asked(words.ClayAsked, words.ClayTyped(f.Clay), func(text string) (screen.Effect, error) {
		next := f
		next.Clay = nil
		sum := 0.0
		for _, one := range strings.Split(text, ",") {
			said := strings.Fields(one)
			if len(said) == 0 {
				continue
			}
			n, err := strconv.ParseFloat(said[len(said)-1], 64)
			if len(said) < 2 || err != nil || !(n > 0) || n > 100 {
				return nil, errors.New(words.ClayWrong)
			}
			next.Clay = append(next.Clay, entry.ShareOf{What: strings.Join(said[:len(said)-1], " "), Share: entry.Share(n)})
			sum += n
		}
		for i := range next.Clay {
			next.Clay[i].Share /= entry.Share(sum)
		}
		return sizes(u, next), nil
	})
}

// arch asks for the opening at the foot through which one taps and pulls: how wide and how
// high.
func arch(u modelwords.Units, f entry.Furnace) screen.Effect {
	cm := screen.Limits{Unit: "cm", Least: 1, Most: 200}
	return screen.AskMaybe(words.ArchWide, cm, act.Given(f.ArchWide), func(wide entry.Maybe[float64]) screen.Effect {
		return screen.AskMaybe(words.ArchHigh, cm, act.Given(f.ArchHigh), func(high entry.Maybe[float64]) screen.Effect {
			next := f
			next.ArchWide = entry.Maybe[entry.Centimetre]{Value: entry.Centimetre(wide.Value), Known: wide.Known}
			next.ArchHigh = entry.Maybe[entry.Centimetre]{Value: entry.Centimetre(high.Value), Known: high.Known}
			return sizes(u, next)
		})
	})
}

// practice asks where the slag of a furnace goes.
func practice(u modelwords.Units, f entry.Furnace) screen.Effect {
	is := func(k string, p entry.SlagPractice) screen.Option {
		return screen.Opt(k, words.SlagWord(p), func(*screen.Shared) screen.Effect {
			next := f
			next.Practice = p
			return sizes(u, next)
		})
	}
	return screen.Choose(words.WhereSlagGoes, is("b", entry.SlagBowl), is("p", entry.SlagPit), is("t", entry.SlagTap), is("r", entry.SlagRunning))
}

// asked is a line to type, with what stands in it now.
func asked(label, given string, then func(string) (screen.Effect, error)) screen.Effect {
	return screen.Ask{Dialog: screen.Field{Label: label, Blank: words.BlankIsNot, Input: screen.Prefilled(given, false), Done: func(_ *screen.Shared, in screen.Input) (screen.Effect, error) {
		return then(in.Trimmed())
	}}}
}

// numbers are those of a text, with a dot or a single comma as the decimal sign left to
// the one who splits it.
func numbers(text string) (ns []float64, err error) {
	for _, w := range strings.Fields(text) {
		n, err := strconv.ParseFloat(w, 64)
		if err != nil {
			return nil, err
		}
		ns = append(ns, n)
	}
	return ns, nil
}
