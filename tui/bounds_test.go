package tui

import (
	"testing"

	"chargehand/model/entry"
	"chargehand/tui/screen"
)

func TestWhatIsOutOfBoundsIsRefusedWhole(t *testing.T) {
	good := screen.Act{Event: entry.Dip{BelowRim: entry.Some(entry.Centimetre(12))}}
	bad := screen.Act{Event: entry.Dip{BelowRim: entry.Some(entry.Centimetre(5000))}}
	if _, refused := bounded(screen.Keep{good}).(screen.Refuse); refused {
		t.Error("a dip of 12 cm was refused")
	}
	for _, e := range []screen.Effect{
		screen.Keep{good, bad}, screen.Each{screen.Keep{good}, screen.Keep{bad}},
		screen.Kindle{Light: entry.Light{Furnace: entry.Furnace{Bore: entry.Some(entry.Centimetre(-1000))}}}, screen.Set{Setting: entry.Setting{}},
	} {
		if r, refused := bounded(e).(screen.Refuse); !refused || r == "" {
			t.Errorf("%+v was let by", e)
		}
	}
}
