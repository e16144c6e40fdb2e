package stores

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// around are what may be said of a deed beside its amounts: who, how long, what it burnt and
// cost, in what weather.
// Each amends the line.
func around(sh *screen.Shared, l house.Line, d entry.Deed) []screen.Option {
	set := func(sh *screen.Shared, change func(*entry.Deed)) screen.Effect {
		changed := d
		change(&changed)
		return act.AmendInHouse(sh, l, changed, time.Time{}, says)
	}
	line := func(k, label, given string, at func(*entry.Deed) *string) screen.Option {
		return screen.Opt(k, words.FieldIs(label, given), func(sh *screen.Shared) screen.Effect {
			return screen.AskWords(label, given, func(text string) screen.Effect {
				return set(sh, func(d *entry.Deed) { *at(d) = text })
			})
		})
	}
	return []screen.Option{
		screen.Opt("p", words.DeedPeopleAre(d.People), func(sh *screen.Shared) screen.Effect {
			return screen.AskMaybe(words.DeedPeople, screen.Limits{Unit: words.DeedPeople, Least: 0, Most: 100}, given(d.People), func(v entry.Maybe[float64]) screen.Effect {
				return set(sh, func(d *entry.Deed) { d.People = entry.Maybe[entry.Count]{Value: entry.Count(v.Value), Known: v.Known} })
			})
		}),
		screen.Opt("o", words.DeedHoursAre(d.Hours), func(sh *screen.Shared) screen.Effect {
			return screen.AskMaybe(words.DeedHours, screen.Limits{Unit: "h", Least: 0, Most: 500}, given(d.Hours), func(v entry.Maybe[float64]) screen.Effect {
				return set(sh, func(d *entry.Deed) { d.Hours = entry.Maybe[entry.Hour]{Value: entry.Hour(v.Value), Known: v.Known} })
			})
		}),
		screen.Opt("m", words.FuelIs(sh.Units, called(sh, d.Fuel)), func(sh *screen.Shared) screen.Effect {
			return fuel(sh, func(a *entry.Amount) screen.Effect {
				return set(sh, func(d *entry.Deed) {
					if d.Fuel = nil; a != nil {
						d.Fuel = []entry.Amount{*a}
					}
				})
			})
		}),
		screen.Opt("y", words.CostIs(d.Cost), func(*screen.Shared) screen.Effect {
			return screen.AskMaybe(words.DeedCost, screen.Limits{Unit: words.MoneyUnit, Least: 0, Most: 1e6}, costOf(d), func(v entry.Maybe[float64]) screen.Effect {
				if !v.Known {
					return set(sh, func(d *entry.Deed) { d.Cost = nil })
				}
				was := ""
				if d.Cost != nil {
					was = d.Cost.Currency
				}
				return screen.Ask{Dialog: screen.Field{Label: words.DeedCurrency, Unit: words.CurrencyHint, Blank: words.BlankNothing, Input: screen.Prefilled(was, false), Done: func(_ *screen.Shared, in screen.Input) (screen.Effect, error) {
					return set(sh, func(d *entry.Deed) {
						d.Cost = &entry.Cost{Amount: entry.Money(v.Value), Currency: in.Trimmed()}
					}), nil
				}}}
			})
		}),
		line("e", words.DeedWeather, d.Weather, func(d *entry.Deed) *string { return &d.Weather }),
		line("n", words.LotNote, d.Note, func(d *entry.Deed) *string { return &d.Note }),
	}
}

// burnable are the materials of the stores that burn.
var burnable = []entry.Material{entry.LotWood, entry.LotCharcoal}

// fuel asks of which lot something was burnt for a deed, and how much; none takes it away.
func fuel(sh *screen.Shared, then func(*entry.Amount) screen.Effect) screen.Effect {
	var of []house.Lot
	for _, l := range lots(sh) {
		if slices.Contains(burnable, l.Of()) && !l.Fines() && len(of) < 12 {
			of = append(of, l)
		}
	}
	return screen.Choose(words.DeedFuel, screen.Lettered('m', len(of)+1, func(i int) (string, func(*screen.Shared) screen.Effect) {
		if i == len(of) {
			return words.NoFuel, func(*screen.Shared) screen.Effect { return then(nil) }
		}
		return of[i].Name, func(sh *screen.Shared) screen.Effect {
			return askAmount(sh, words.HowMuchOf(of[i].Name), of[i].Lot, entry.None[float64](), func(a entry.Amount, with done) screen.Effect {
				if len(with) == 0 {
					return then(&a)
				}
				return screen.Each{keep(with), then(&a)}
			})
		}
	})...)
}

func costOf(d entry.Deed) entry.Maybe[float64] {
	if d.Cost == nil {
		return entry.None[float64]()
	}
	return entry.Some(float64(d.Cost.Amount))
}
