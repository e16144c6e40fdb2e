package tui

import (
	"testing"

	"chargehand/model/entry"
	"chargehand/tui/screen"
)

func TestWhatIsOutOfBoundsIsRefusedWhole(t *testing.T) {
	good := screen.Act{Event: entry.Dip{BelowRim: entry.Some(entry.Centimetre(12))}}
	bad := screen.Act{Event: entry.Dip{BelowRim: entry.Some(entry.Centimetre(5000))}}
	judged := func(e screen.Effect) screen.Effect {
		_, e = New(Config{}).judged(e, nil)
		return e
	}
	if _, refused := judged(screen.Keep{good}).(screen.Refuse); refused {
		t.Error("a dip of 12 cm was refused")
	}
	for _, e := range []screen.Effect{
		screen.Keep{good, bad}, screen.Each{screen.Keep{good}, screen.Keep{bad}}, screen.SoFar{bad},
		screen.Kindle{Light: entry.Light{Furnace: entry.Furnace{Bore: entry.Some(entry.Centimetre(-1000))}}}, screen.Set{Setting: entry.Setting{}},
		screen.House{{Event: entry.Remind{}}},
	} {
		if r, refused := judged(e).(screen.Refuse); !refused || r == "" {
			t.Errorf("%+v was let by", e)
		}
	}
}
