//go:build !linux

package main

import "chargehand/model/entry"

func systemClock() func() entry.Stamp { return processClock() }
