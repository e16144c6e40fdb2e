package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

// stripped leaves out what only a debugger reads, which takes half the time to link.
const stripped = "-ldflags=-s -w"

// binary builds the program once for all tests that run it as a person does;
// under the race detector, with it.
var binary = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "chargehand-test-")
	if err != nil {
		return "", err
	}
	leftovers = dir
	path := filepath.Join(dir, "chargehand")
	args := []string{"build", stripped, "-o", path}
	if raced {
		args = append(args, "-race")
	}
	if out, err := exec.Command("go", append(args, ".")...).CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, out)
	}
	return path, nil
})

// binaryWithClock is the same with keys that move its clock on, which the shipped one
// does not have.
var binaryWithClock = sync.OnceValues(func() (string, error) { return buildWith("clockkeys") })

// binaryWithFault is that with a solver of which every second job breaks down.
var binaryWithFault = sync.OnceValues(func() (string, error) { return buildWith("clockkeys,solverfault") })

// buildWith builds the program beside the ordinary one with other build tags.
func buildWith(tags string) (string, error) {
	path, err := binary()
	if err != nil {
		return "", err
	}
	path += "-" + strings.ReplaceAll(tags, ",", "-")
	if out, err := exec.Command("go", "build", stripped, "-tags", tags, "-o", path, ".").CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, out)
	}
	return path, nil
}

// leftovers is the folder to remove when the tests are through.
var leftovers string

// built is the path of the program, built.
func built(t testing.TB) string {
	t.Helper()
	path, err := binary()
	if err != nil {
		t.Fatal(err)
	}
	return path
}

// tidied removes what was built once the tests are through.
type tidied struct{ *testing.M }

// sideBySide is how many tests run at once where the command does not say: those at a
// terminal mostly wait for a second to pass.
const sideBySide = "8"

func (m tidied) Run() int {
	if err := flag.Set("test.parallel", sideBySide); err != nil {
		panic(err)
	}
	code := m.M.Run()
	if leftovers != "" {
		os.RemoveAll(leftovers)
	}
	return code
}
