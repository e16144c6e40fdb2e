// Package disk is what the book and its twins ask of the file system beyond the
// standard library: bytes and names brought to the disk for certain, locks,
// whether a path still leads to an open file, and errors in our own words.
package disk
