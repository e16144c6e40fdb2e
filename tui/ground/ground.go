// Package ground keeps the program from asking the terminal anything before it
// starts. The screen library asks for the background colour when it is
// initialised and waits up to five seconds for an answer; told beforehand, it
// does not ask. What it is told does not matter: the screens have a theme of
// their own and never use the library's.
//
// Packages that do not depend on each other are initialised in the order of
// their import paths, and this path sorts before the screen library's. It must
// therefore not import that library, not even through another package of ours.
// Only cmd imports it, for its effect.
package ground

import "github.com/charmbracelet/lipgloss"

func init() { lipgloss.SetHasDarkBackground(true) }
