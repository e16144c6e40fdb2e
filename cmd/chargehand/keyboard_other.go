//go:build !unix

package main

import "os"

// keyboardOf is a terminal's input; on this system pastes that the terminal does not mark are
// not told from keys.
func keyboardOf(f *os.File) *os.File { return f }
