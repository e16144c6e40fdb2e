package act

import (
	"errors"
	"strconv"
	"time"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// WholeMinutes is how well a time typed in hours and minutes is known.
const WholeMinutes = 30 * time.Second

// EnterLate asks when, then what, then the rest of it.
func EnterLate(sh *screen.Shared) screen.Effect {
	if screen.RightsIn(sh.Smelt) < screen.Mendable {
		return screen.Refuse(WhyNot(sh.Smelt))
	}
	return AskWhen(sh, words.LateWhen, "", func(at time.Time) screen.Effect {
		shown := at.Add(sh.Smelt.Off(sh.Now))
		then := func(ev entry.Event) screen.Effect {
			return screen.Each{screen.Keep{{Event: ev, Happened: at, Uncertain: WholeMinutes}}, screen.Say(func(sh *screen.Shared) string {
				return words.Late(shown.Format(modelwords.Clock), SayLast(sh))
			})}
		}
		var list []screen.Option
		for _, a := range lateActs {
			list = append(list, screen.Opt(a.key, a.word, func(sh *screen.Shared) screen.Effect { return a.ask(sh, nil, then) }))
		}
		return screen.Choose(words.LateWhat(shown.Format(modelwords.Clock)), list...)
	}, screen.Opt("p", words.DoRows, EnterRows))
}

// lateActs are what may be entered late, commonest first.
var lateActs = []struct {
	key, word string
	ask       Form
}{
	{"c", words.DoAnyCharge, AskCharge}, {"s", words.DoOreAlone, askOreAlone}, {"f", words.DoAnyFill, AskFill},
	{"b", words.DoBlast, AskBlast}, {"t", words.DoTap, AskTap}, {"r", words.DoRod, Plain(entry.Rod{})},
	{"l", words.DoLook, AskLook}, {"p", words.DoPoke, Plain(entry.Poke{})}, {"i", words.DoDip, AskDip},
	{"e", words.DoTemperature, AskTemperature}, {"w", words.DoWeigh, AskWeigh}, {"n", words.DoNote, AskNote},
	{"a", words.DoAround, AskAround}, {"y", words.DoTuyere, AskTuyere},
	{"k", words.DoPauseBegins, Plain(entry.Pause{})}, {"g", words.DoPauseEnds, Plain(entry.Resume{})},
	{"h", words.DoPreheat, Plain(entry.PhaseSet{Phase: entry.Preheat})}, {"v", words.DoMainBurn, Plain(entry.PhaseSet{Phase: entry.MainBurn})},
	{"q", words.DoIncident, AskIncident}, {"x", words.DoOtherIn, AskOtherIn}, {"z", words.DoHoldOre, Plain(entry.OreHeld{})}, {"j", words.DoOreAgain, Plain(entry.OreHeld{Again: true})},
	{"m", words.DoLastOre, Plain(entry.LastOre{})}, {"d", words.DoBurnDown, Plain(entry.BurnDown{})}, {"o", words.DoExtract, AskExtract},
}

// AskWhen asks for a time of this smelt: so many minutes ago, or a time of day.
func AskWhen(sh *screen.Shared, label, given string, then func(time.Time) screen.Effect, instead ...screen.Option) screen.Effect {
	return screen.Ask{Dialog: screen.Field{
		Label: label, Instead: instead, Unit: words.WhenHint(afterwards(sh)), Input: screen.Prefilled(given, true), Keeps: clockOf,
		Done: func(sh *screen.Shared, in screen.Input) (screen.Effect, error) {
			at, err := timeOf(sh, in.Trimmed())
			if err != nil {
				return nil, err
			}
			return then(at), nil
		},
	}}
}

// clockOf is a time as it is typed, and so many minutes ago as the time that it is.
func clockOf(sh *screen.Shared, text string) string {
	if len(text) > farthestBack {
		return text
	}
	at, err := timeOf(sh, text)
	if err != nil {
		return text
	}
	return at.Add(sh.Smelt.Off(sh.Now)).Format(modelwords.Clock)
}

// farthestBack is how many digits a number of minutes has; more are a time.
const farthestBack = 2

// timeOf reads a time of the smelt. Without a colon, one or two digits are
// minutes ago and more are a time of day. It is typed as the smelt's times are
// shown, and given by the clock of the machine, as entries have it.
func timeOf(sh *screen.Shared, text string) (time.Time, error) {
	s := sh.Smelt
	off := s.Off(sh.Now)
	now := latest(sh)
	var at time.Time
	if ago, err := strconv.Atoi(text); err == nil && len(text) <= farthestBack {
		at = now.Add(-time.Duration(ago) * time.Minute)
	} else if at, err = screen.ClockTime(text, now); err != nil {
		return time.Time{}, err
	}
	// The time goes by the wall clock as it is now; light by the smelt's own.
	elapsed := func() time.Duration {
		if s.Light().Imported { // by the days of the log
			return at.Sub(s.Reading().Lit)
		}
		return s.Clock(sh.Now) - sh.Now.Wall.Add(off).Sub(at)
	}
	if next := at.AddDate(0, 0, 1); elapsed() < 0 && afterwards(sh) && next.Before(ended(sh).Add(sameDay)) {
		at = next // after the last that is known of it
	}
	if early := -elapsed(); early > 0 {
		if at.AddDate(0, 0, 1).Sub(now) < early { // nearer to now than to the light
			return time.Time{}, errors.New(words.StillToCome(now.Format(modelwords.Clock)))
		}
		return time.Time{}, errors.New(words.BeforeLight(s.Reading().Lit.Format(modelwords.Clock)))
	}
	return entry.Wall(at.Add(-off)), nil
}

// latest is the moment that times are counted back from, in the smelt's own
// offset: now, or the end of a smelt that has long been over.
func latest(sh *screen.Shared) time.Time {
	if afterwards(sh) {
		return ended(sh).Add(time.Minute)
	}
	return sh.Now.Wall.Add(sh.Smelt.Off(sh.Now)).In(sh.Smelt.Reading().Lit.Location())
}

// sameDay is how long after its end a smelt's times are still those of today.
const sameDay = 12 * time.Hour

// afterwards tells whether a time of the clock means one of the smelt's own day
// and no other: a log that was brought in, or a smelt that ended before today.
func afterwards(sh *screen.Shared) bool {
	s := sh.Smelt
	return !s.Running() && (s.Light().Imported || sh.Now.Wall.Sub(ended(sh)) > sameDay)
}

// ended is when a smelt that is over was: at its last act, or when its last phase
// began, as closing it.
func ended(sh *screen.Shared) time.Time {
	s := sh.Smelt
	return s.Reading().Wall(max(s.Reading().At, s.Since()))
}
