package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"runtime"
	"runtime/debug"

	"chargehand/model/entry"
	"chargehand/model/words"
)

func versionCommand() command {
	return command{name: "version", does: words.VersionDoes, setUp: func(*flag.FlagSet) func(world, common, []string) error {
		return func(w world, c common, operands []string) error {
			if err := none(operands); err != nil {
				return err
			}
			v := struct {
				Program string `json:"program"`
				Journal int    `json:"journal"`
				Go      string `json:"go"`
				System  string `json:"system"`
			}{programVersion(), entry.Version, runtime.Version(), runtime.GOOS + "/" + runtime.GOARCH}
			if c.json {
				return json.NewEncoder(w.out).Encode(v)
			}
			_, err := fmt.Fprintln(w.out, words.Version(v.Program, v.Journal, v.Go, v.System))
			return err
		}
	}}
}

// programVersion is the module's version, or the commit it was built from.
func programVersion() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return words.VersionUnknown
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" && len(s.Value) >= 12 {
			return s.Value[:12]
		}
	}
	if v := info.Main.Version; v != "" && v != "(devel)" {
		return v
	}
	return words.VersionUnknown
}
