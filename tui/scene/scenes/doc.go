// Package scenes holds what the tests of pictures paint. The smelts are invented.
// Their figures are set by hand, not read from entries, so that a picture changes
// only with what paints it. Only tests import it.
package scenes
