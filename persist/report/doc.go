// Package report is the room for what is handed on of a smelt: one page to
// print, with the shaft painted from model/picture as SVG, and the account.
package report
