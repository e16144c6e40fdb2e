package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(tidied{m}, map[string]func(){"chargehand": main})
}

// The scripts run the command as a person would. $LOGS and $SMELTS hold the published
// logs and tables.
func TestScripts(t *testing.T) {
	logs, err := filepath.Abs(filepath.Join(root, "testdata", "logs"))
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: filepath.Join("testdata", "script"),
		Setup: func(e *testscript.Env) error {
			e.Setenv("LOGS", logs)
			e.Setenv("SMELTS", filepath.Join(filepath.Dir(logs), "smelts"))
			e.Setenv("HOME", e.WorkDir)
			e.Setenv("XDG_DATA_HOME", filepath.Join(e.WorkDir, "data"))
			e.Setenv("TZ", "UTC")
			return os.MkdirAll(filepath.Join(e.WorkDir, "data"), 0o755)
		},
	})
}
