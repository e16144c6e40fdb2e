package ground

import (
	"os/exec"
	"strings"
	"testing"
)

// The order of initialisation is the whole of this package. The language
// leaves it to the linker, which sorts by import path (go1.21 release notes,
// "Package initialization order is now specified more precisely"); so the path
// must sort first and must not depend on the screen library.
func TestInitialisedFirst(t *testing.T) {
	const library = "github.com/charmbracelet/bubbletea"
	out, err := exec.Command("go", "list", "-deps", ".").CombinedOutput()
	if err != nil {
		t.Fatalf("go list: %v\n%s", err, out)
	}
	deps := strings.Fields(string(out))
	self := deps[len(deps)-1]
	if self >= library {
		t.Errorf("%s sorts after %s and would be initialised after it", self, library)
	}
	for _, d := range deps {
		if d == library {
			t.Errorf("depends on %s, so it is initialised after it", library)
		}
	}
}
