package logcsv

import "testing"

func TestNotesThatLookLikeFormulasAreHarmlessAndComeBack(t *testing.T) {
	for note, cell := range map[string]string{
		"": "", "slag runs": "slag runs", "=1+1": "'=1+1", "+49 30": "'+49 30", "-": "'-", "@x": "'@x", "'=1": "''=1",
		"'tis hot": "'tis hot", "a=1": "a=1", "\t=1": "'\t=1",
	} {
		if got := Harmless(note); got != cell {
			t.Errorf("%q becomes %q, want %q", note, got, cell)
		}
		if got := asNoted(cell); got != note {
			t.Errorf("%q is read as %q, want %q", cell, got, note)
		}
	}
	if got := Harmless("left \u202e right"); got != "left  right" {
		t.Errorf("direction marks stay: %q", got)
	}
}
