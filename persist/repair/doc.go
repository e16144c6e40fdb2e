// Package repair is for when something is wrong with a book, and is not in the
// way when nothing is: Check looks through book and twins and changes nothing,
// Rescue makes the book anew from both.
package repair
