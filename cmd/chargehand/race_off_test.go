//go:build !race

package main

// raced tells whether the tests run under the race detector.
const raced = false
