package words

import "testing"

func TestBothFitsIntoASmallWindow(t *testing.T) {
	for did, want := range map[string]string{
		"":                   "list closed, nothing done",
		"charge 2: 1 bucket": "list closed, nothing done; charge 2: 1 bucket",
		"nobody asks about the top gas now; l says what is seen": "list closed; nobody asks about the top gas now; l says what is seen",
	} {
		if got := Both(ListClosed, did); got != want {
			t.Errorf("%q: %q, want %q", did, got, want)
		}
	}
	if got := Both(TicksStay, "nobody asks about the top gas now; l says what is seen"); got != TicksStay+"; nobody asks about the top gas now; l says what is seen" {
		t.Errorf("ticks that stay are left out: %q", got)
	}
}
