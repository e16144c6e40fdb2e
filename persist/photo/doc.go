// Package photo reads the photos of a folder for a report: when each was taken, and its
// picture made anew, smaller and upright, so that nothing else the file held is in it:
// no place, no name of a person or a camera, no small preview.
package photo
