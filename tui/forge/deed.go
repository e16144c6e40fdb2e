package forge

import (
	"errors"
	"strconv"

	"chargehand/model/entry"
	"chargehand/model/forge"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// limits of what fields take.
var (
	kilograms   = screen.Limits{Unit: "kg", Least: 0.001, Most: 1000}
	millimetres = screen.Limits{Unit: "mm", Least: 0.1, Most: 10_000}
	percent     = screen.Limits{Unit: "%", Least: 0, Most: 100}
	amount      = screen.Limits{Least: 0, Most: 1e9}
)

func called(b forge.Bench, i int) string { return modelwords.PieceCalled(b, i) }

// says is an event of the forge in words, its pieces by their names.
func says(sh *screen.Shared, ev entry.Event) string { return sh.Units.Forging(bench(sh), ev) }

func kg(v float64) entry.Maybe[entry.Kilogram] { return entry.Some(entry.Kilogram(v)) }

func mass(v entry.Maybe[float64]) entry.Maybe[entry.Kilogram] {
	return entry.Maybe[entry.Kilogram]{Value: entry.Kilogram(v.Value), Known: v.Known}
}

func given[Q entry.Quantity](m entry.Maybe[Q]) entry.Maybe[float64] {
	return entry.Maybe[float64]{Value: float64(m.Value), Known: m.Known}
}

// keep keeps what was done and says it, puts the mark on a piece, and shows the caution at
// the deed that the person was not shown yet.
func (s Screen) keep(sh *screen.Shared, mark entry.UID, evs ...entry.Event) screen.Effect {
	said := evs[0]
	s.picked = mark
	shown := map[string]bool{}
	for _, l := range sh.Home.Lines() {
		if c, ok := l.Event.(entry.CautionShown); ok && l.Entry.By == sh.By {
			shown[c.Caution] = true
		}
	}
	if c, due := forge.CautionAt(evs, shown); due {
		s.careful = c.ID
		evs = append(evs, entry.CautionShown{Caution: c.ID})
	}
	return screen.Each{screen.DidInHouse(func(sh *screen.Shared) string {
		text := says(sh, said)
		b := bench(sh)
		for _, id := range of(said) {
			if i := b.Find(id); i >= 0 {
				for _, r := range b.Remarks(i) {
					if r.Kind == forge.HoldsMore {
						text += "; " + sh.Units.Remark(r)
					}
				}
			}
		}
		return text
	}, evs...), screen.Put{Screen: s}}
}

// of are the pieces that an event made something of.
func of(ev entry.Event) (ids []entry.UID) {
	if p, ok := ev.(entry.Piece); ok {
		for _, from := range p.From {
			ids = append(ids, from.Piece)
		}
	}
	return ids
}

// fire puts a piece into the fire, or takes it out.
func (s Screen) fire(sh *screen.Shared, b forge.Bench, i int) screen.Effect {
	p := b.Pieces[i]
	if p.InFire != 0 {
		return s.keep(sh, p.UID, entry.HeatOver{Heat: sh.Home.Ref(p.InFire), Pieces: []entry.HeatedMass{{Piece: p.UID}}})
	}
	return s.keep(sh, p.UID, entry.Heat{Pieces: []entry.UID{p.UID}})
}

// newPiece is one that did not come of a smelt of this house, or of one never keyed.
func (s Screen) newPiece(sh *screen.Shared) screen.Effect {
	uid := sh.NewUID()
	kinds := []entry.PieceKind{entry.BloomPiece, entry.HalfPiece, entry.Billet, entry.Bar, entry.Finished}
	return screen.ChooseOr("b", words.PieceIsA, screen.Lettered('n', len(kinds), func(k int) (string, func(*screen.Shared) screen.Effect) {
		return modelwords.PieceKind(kinds[k]), func(sh *screen.Shared) screen.Effect {
			return askText(words.PieceName, numbered(bench(sh), kinds[k]), "", func(name string) (screen.Effect, error) {
				return askText(words.PieceFromText, "", words.PlaceBlank, func(from string) (screen.Effect, error) {
					return askText(words.PieceYear, "", words.PlaceBlank, func(text string) (screen.Effect, error) {
						year, err := strconv.Atoi(text)
						if text != "" && (err != nil || year < 1000 || year > sh.Now.Wall.Year()) {
							return nil, errors.New(words.BareYear(text))
						}
						return screen.AskMaybe(words.PieceKg, kilograms, entry.None[float64](), func(v entry.Maybe[float64]) screen.Effect {
							return s.keep(sh, uid, entry.Piece{UID: uid, Form: kinds[k], Name: name, WhereFrom: from, Year: year, Mass: mass(v)})
						}), nil
					}), nil
				}), nil
			})
		}
	})...)
}

// askText asks for words; blank says what none means, and "" that there must be some.
func askText(label, shown, blank string, then func(string) (screen.Effect, error)) screen.Effect {
	return screen.Ask{Dialog: screen.Field{Label: label, Blank: blank, Input: screen.Prefilled(shown, false), Done: func(_ *screen.Shared, in screen.Input) (screen.Effect, error) {
		text := in.Trimmed()
		if text == "" && blank == "" {
			return nil, errors.New(words.NameMissing)
		}
		return then(text)
	}}}
}

// numbered is a name for one more piece of a kind.
func numbered(b forge.Bench, k entry.PieceKind) string {
	n := 1
	for _, p := range b.Pieces {
		if p.Form == k {
			n++
		}
	}
	return words.NumberedPiece(k, n)
}

// cut makes two pieces of one, and keeps the crop ends.
func (s Screen) cut(sh *screen.Shared, b forge.Bench, i int) screen.Effect {
	p := b.Pieces[i]
	one, other, crop := sh.NewUID(), sh.NewUID(), sh.NewUID()
	form := p.Form
	if form == entry.BloomPiece {
		form = entry.HalfPiece
	}
	base := modelwords.PieceBrief(b, i)
	if p.Name == "" && form == entry.HalfPiece {
		base = modelwords.PieceKindShort(form)
	}
	from := []entry.PieceFrom{{Piece: p.UID}}
	part := func(uid entry.UID, which string, v entry.Maybe[float64]) entry.Piece {
		return entry.Piece{UID: uid, Form: form, Name: words.PartName(base, which), From: from, Mass: mass(v)}
	}
	return screen.AskMaybe(words.CutOne, kilograms, entry.None[float64](), func(v entry.Maybe[float64]) screen.Effect {
		rest := entry.None[float64]()
		if left := float64(p.Mass.Value) - v.Value; p.Mass.Known && v.Known && left > 0 {
			rest = entry.Some(round(left))
		}
		return screen.AskMaybe(words.CutOther, kilograms, rest, func(w entry.Maybe[float64]) screen.Effect {
			evs := []entry.Event{part(one, words.PartOne, v), part(other, words.PartOther, w)}
			return screen.Ask{Dialog: screen.Field{Label: words.CutCrop, Unit: kilograms.Unit, Blank: words.BlankNone, Input: screen.NewInput(true), Done: func(sh *screen.Shared, in screen.Input) (screen.Effect, error) {
				if in.Trimmed() == "" {
					return s.keep(sh, one, evs...), nil
				}
				c, err := in.Value(sh.Units, kilograms)
				if err != nil {
					return nil, err
				}
				return s.keep(sh, one, append(evs, entry.Piece{UID: crop, Form: entry.CropEnd, From: from, Mass: kg(c)})...), nil
			}}}
		})
	})
}

func round(v float64) float64 { return float64(int(v*1000+0.5)) / 1000 }

// weld makes one piece of two, also across smelts and years.
func (s Screen) weld(sh *screen.Shared, b forge.Bench, i int) screen.Effect {
	var with []int
	for _, r := range pieceRows(b) {
		if p := b.Pieces[r.At]; r.At != i && !p.Spent && p.EndsAs == "" && p.Form != entry.CropEnd && len(with) < 20 {
			with = append(with, r.At)
		}
	}
	if len(with) == 0 {
		return screen.Refuse(words.NothingToWeld)
	}
	uid := sh.NewUID()
	p := b.Pieces[i]
	return screen.Choose(words.WeldWith, screen.Lettered('w', len(with), func(n int) (string, func(*screen.Shared) screen.Effect) {
		other := b.Pieces[with[n]]
		label := called(b, with[n])
		if other.Mass.Known {
			label += ", " + sh.Units.Kg(other.Mass.Value)
		}
		return label, func(sh *screen.Shared) screen.Effect {
			forms := []entry.PieceKind{entry.Billet, entry.Bar, entry.Finished}
			return screen.ChooseOr("l", words.NowItIs, screen.Lettered('w', len(forms), func(k int) (string, func(*screen.Shared) screen.Effect) {
				return modelwords.PieceKindShort(forms[k]), func(sh *screen.Shared) screen.Effect {
					return askText(words.PieceName, numbered(bench(sh), forms[k]), "", func(name string) (screen.Effect, error) {
						return screen.AskMaybe(words.WeldKg, kilograms, entry.None[float64](), func(v entry.Maybe[float64]) screen.Effect {
							return s.keep(sh, uid, entry.Piece{UID: uid, Form: forms[k], Name: name, From: []entry.PieceFrom{{Piece: p.UID, Mass: p.Mass}, {Piece: other.UID, Mass: other.Mass}}, Mass: mass(v)})
						}), nil
					})
				}
			})...)
		}
	})...)
}

// test asks which test, what it showed and where.
func (s Screen) test(sh *screen.Shared, b forge.Bench, i int) screen.Effect {
	uid := b.Pieces[i].UID
	kinds := []string{forge.Spark, forge.File, forge.Bend, forge.Quench, forge.Etch, forge.Hammer}
	return screen.Choose(words.TestWhich, screen.Lettered('e', len(kinds), func(k int) (string, func(*screen.Shared) screen.Effect) {
		test := kinds[k]
		return words.TestName(test), func(*screen.Shared) screen.Effect {
			place := func(result string) screen.Effect {
				return askText(words.TestPlace, "", words.PlaceBlank, func(at string) (screen.Effect, error) {
					return s.keep(sh, uid, entry.PieceTested{Piece: uid, Place: at, Test: test, Result: result}), nil
				})
			}
			var results []string
			for _, r := range forge.Results {
				if r.Test == test {
					results = append(results, r.Says)
				}
			}
			return screen.Choose(words.TestShowed, screen.Lettered('?', len(results)+1, func(n int) (string, func(*screen.Shared) screen.Effect) {
				if n == len(results) {
					return words.TestInWords, func(*screen.Shared) screen.Effect {
						return askText(words.TestWords, "", "", func(text string) (screen.Effect, error) { return place(text), nil })
					}
				}
				return results[n], func(*screen.Shared) screen.Effect { return place(results[n]) }
			})...)
		}
	})...)
}

// deeds is the list of what else may have been done with a piece.
func (s Screen) deeds(sh *screen.Shared, b forge.Bench, i int) screen.Effect {
	p := b.Pieces[i]
	again := func(ev entry.Piece) screen.Effect {
		return s.keep(sh, p.UID, ev)
	}
	list := []screen.Option{
		screen.Opt("w", words.PieceWeigh, func(*screen.Shared) screen.Effect { return s.weigh(sh, b, i) }),
		screen.Opt("k", words.PieceCropOff, func(sh *screen.Shared) screen.Effect {
			crop := sh.NewUID()
			return screen.AskNumber(words.CutCrop, kilograms, entry.None[float64](), func(v float64) screen.Effect {
				return s.keep(sh, p.UID, entry.Piece{UID: crop, Form: entry.CropEnd, From: []entry.PieceFrom{{Piece: p.UID}}, Mass: kg(v)})
			})
		}),
	}
	for n, end := range entry.Choices[entry.PieceEnd]() {
		list = append(list, screen.Opt("ghjlm"[n:n+1], words.PieceGone+words.PieceGoneAs(end), func(*screen.Shared) screen.Effect {
			return askText(words.PieceTo, "", words.PlaceBlank, func(to string) (screen.Effect, error) {
				ev := p.Piece
				ev.EndsAs, ev.To = end, to
				return again(ev), nil
			})
		}))
	}
	list = append(list,
		screen.Opt("n", words.PieceRename, func(*screen.Shared) screen.Effect {
			return askText(words.PieceName, called(b, i), "", func(name string) (screen.Effect, error) {
				ev := p.Piece
				ev.Name = name
				return again(ev), nil
			})
		}),
		screen.Opt("i", words.PieceSize, func(*screen.Shared) screen.Effect { return s.size(sh, b, i) }),
		screen.Opt("e", words.PiecePrinted, func(*screen.Shared) screen.Effect { return s.printed(sh, b, i) }),
		screen.Opt("q", words.PieceCost, func(*screen.Shared) screen.Effect {
			return screen.AskNumber(words.CostAmount, amount, entry.None[float64](), func(v float64) screen.Effect {
				return askText(words.CostCurrency, "", words.PlaceBlank, func(currency string) (screen.Effect, error) {
					ev := p.Piece
					ev.Cost = &entry.Cost{Amount: entry.Money(v), Currency: currency}
					return again(ev), nil
				})
			})
		}),
		screen.Opt("a", words.CautionsForge, func(*screen.Shared) screen.Effect { return s.cautions(0) }),
		screen.Opt("z", words.DoUndo, func(sh *screen.Shared) screen.Effect { return act.BringBackInHouse(sh, entry.OnForge, says) }))
	return screen.Choose(words.PieceDeedOf+called(b, i), list...)
}

// cautions shows one caution after the other again.
func (s Screen) cautions(n int) screen.Effect {
	s.careful = forge.Cautions[n].ID
	return screen.Each{screen.Put{Screen: s}, screen.Ask{Dialog: screen.Choice{Title: words.CautionOf(n+1, len(forge.Cautions)), Options: []screen.Option{
		screen.Opt("n", words.DoNextField, func(*screen.Shared) screen.Effect { return s.cautions((n + 1) % len(forge.Cautions)) }),
	}}}}
}

// weigh asks for a mass, and in water.
func (s Screen) weigh(sh *screen.Shared, b forge.Bench, i int) screen.Effect {
	p := b.Pieces[i]
	return screen.AskNumber(words.PieceKg, kilograms, entry.None[float64](), func(v float64) screen.Effect {
		return screen.AskMaybe(words.PieceWater, screen.Limits{Unit: "kg", Least: 0.001, Most: v}, entry.None[float64](), func(water entry.Maybe[float64]) screen.Effect {
			ev := entry.PieceWeighed{Piece: p.UID, Mass: entry.Kilogram(v), InWater: mass(water)}
			if !water.Known {
				return s.keep(sh, p.UID, ev)
			}
			return act.AskSoaked(func(soaked bool) screen.Effect { ev.Soaked = soaked; return s.keep(sh, p.UID, ev) }, func() screen.Effect { return s.keep(sh, p.UID, ev) })
		})
	})
}

// size asks for thickness, width and length.
func (s Screen) size(sh *screen.Shared, b forge.Bench, i int) screen.Effect {
	p := b.Pieces[i]
	was := func(n int) entry.Maybe[float64] {
		if len(p.Size) != 3 {
			return entry.None[float64]()
		}
		return entry.Some(float64(p.Size[n]))
	}
	return screen.AskNumber(words.SizeThick, millimetres, was(0), func(thick float64) screen.Effect {
		return screen.AskNumber(words.SizeWide, millimetres, was(1), func(wide float64) screen.Effect {
			return screen.AskNumber(words.SizeLong, millimetres, was(2), func(long float64) screen.Effect {
				ev := p.Piece
				ev.Size = []entry.Millimetre{entry.Millimetre(thick), entry.Millimetre(wide), entry.Millimetre(long)}
				return s.keep(sh, p.UID, ev)
			})
		})
	})
}

// printed asks for what somebody else wrote of a piece, to hold it against its mass.
func (s Screen) printed(sh *screen.Shared, b forge.Bench, i int) screen.Effect {
	p := b.Pieces[i]
	return askText(words.PrintedOf, "ore", "", func(what string) (screen.Effect, error) {
		return screen.AskNumber(words.PrintedMass, kilograms, entry.None[float64](), func(v float64) screen.Effect {
			return screen.AskMaybe(words.PrintedShare, percent, entry.None[float64](), func(share entry.Maybe[float64]) screen.Effect {
				return screen.AskMaybe(words.PrintedLost, kilograms, entry.None[float64](), func(lost entry.Maybe[float64]) screen.Effect {
					ev := p.Piece
					ev.Printed = append(ev.Printed[:len(ev.Printed):len(ev.Printed)], entry.Printed{Of: what, Mass: kg(v), Percent: entry.Maybe[entry.Percent]{Value: entry.Percent(share.Value), Known: share.Known}, Lost: mass(lost)})
					return s.keep(sh, p.UID, ev)
				})
			})
		}), nil
	})
}
