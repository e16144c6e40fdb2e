package tui

import (
	"errors"
	"strconv"
	"time"

	"chargehand/model/entry"
	"chargehand/model/words"
)

// wholeMinutes is how well a time typed in hours and minutes is known.
const wholeMinutes = 30 * time.Second

// enterLate asks when, then what, then the rest of it.
func enterLate(sh shared) step {
	if rightsIn(sh.smelt) < mendable {
		return refused(whyNot(sh.smelt))
	}
	return askWhen(sh, words.LateWhen, "", func(at time.Time) step {
		then := func(ev entry.Event) step {
			return step{acts: []act{{event: ev, happened: at, uncertain: wholeMinutes}}, say: func(sh shared) string {
				return words.Late(at.Format(words.Clock), sayLast(sh))
			}}
		}
		var list []option
		for _, a := range lateActs {
			list = append(list, opt(a.key, a.word, func(sh shared) step { return a.ask(sh, nil, then) }))
		}
		return choose(words.LateWhat(at.Format(words.Clock)), list...)
	})
}

// lateActs are what may be entered late, commonest first.
var lateActs = []struct {
	key, word string
	ask       asker
}{
	{"c", words.DoAnyCharge, askCharge}, {"s", words.DoOreAlone, askOreAlone}, {"f", words.DoAnyFill, askFill},
	{"b", words.DoBlast, askBlast}, {"t", words.DoTap, askTap}, {"r", words.DoRod, plain(entry.Rod{})},
	{"l", words.DoLook, askLook}, {"p", words.DoPoke, plain(entry.Poke{})}, {"i", words.DoDip, askDip},
	{"e", words.DoTemperature, askTemperature}, {"w", words.DoWeigh, askWeigh}, {"n", words.DoNote, askNote},
	{"a", words.DoArch, askArch}, {"y", words.DoTuyere, askTuyere},
	{"k", words.DoPauseBegins, plain(entry.Pause{})}, {"g", words.DoPauseEnds, plain(entry.Resume{})},
	{"m", words.DoLastOre, plain(entry.LastOre{})}, {"d", words.DoBurnDown, plain(entry.BurnDown{})}, {"o", words.DoExtract, askExtract},
}

// askWhen asks for a time of this smelt: so many minutes ago, or a time of day.
func askWhen(sh shared, label, given string, then func(time.Time) step) step {
	return step{ask: field{
		label: label, unit: words.WhenHint(afterwards(sh)), input: prefilled(given, true),
		done: func(sh shared, in input) (step, error) {
			at, err := timeOf(sh, in.trimmed())
			if err != nil {
				return step{}, err
			}
			return then(at), nil
		},
	}}
}

// farthestBack is how many digits a number of minutes has; more are a time.
const farthestBack = 2

// timeOf reads a time of the smelt. Without a colon, one or two digits are
// minutes ago and more are a time of day.
func timeOf(sh shared, text string) (time.Time, error) {
	s := sh.smelt
	now := latest(sh)
	var at time.Time
	if ago, err := strconv.Atoi(text); err == nil && len(text) <= farthestBack {
		at = now.Add(-time.Duration(ago) * time.Minute)
	} else if at, err = clockTime(text, now); err != nil {
		return time.Time{}, err
	}
	// The time goes by the wall clock as it is now; light by the smelt's own.
	elapsed := func() time.Duration { return s.Clock(sh.now) - sh.now.Wall.Sub(at) }
	if next := at.AddDate(0, 0, 1); elapsed() < 0 && afterwards(sh) && next.Before(ended(sh).Add(sameDay)) {
		at = next // after the last that is known of it
	}
	if elapsed() < 0 {
		return time.Time{}, errors.New(words.BeforeLight(s.Reading().Lit.Format(words.Clock)))
	}
	return entry.Wall(at), nil
}

// latest is the moment that times are counted back from, in the smelt's own
// offset: now, or the end of a smelt that has long been over.
func latest(sh shared) time.Time {
	if afterwards(sh) {
		return ended(sh).Add(time.Minute)
	}
	return sh.now.Wall.In(sh.smelt.Reading().Lit.Location())
}

// sameDay is how long after its end a smelt's times are still those of today.
const sameDay = 12 * time.Hour

// afterwards tells whether a time of the clock means one of the smelt's own day
// and no other: a log that was brought in, or a smelt that ended before today.
func afterwards(sh shared) bool {
	s := sh.smelt
	return !s.Running() && (s.Light().Imported || sh.now.Wall.Sub(ended(sh)) > sameDay)
}

// ended is when a smelt that is over was: at its last act, or when its last phase
// began, as closing it.
func ended(sh shared) time.Time {
	s := sh.smelt
	return s.Reading().Wall(max(s.Reading().At, s.Since()))
}
