package pwa

import "io/fs"

// Licences returns the page of licences of all that the program is made with, which a release puts beside the app, and ""
// where none was made, as in a program built from a checkout.
func Licences(dist fs.FS) (string, error) {
	small, err := fs.ReadFile(dist, ".licences.br")
	if err != nil {
		return "", nil
	}
	text, err := Unpack(small)
	return string(text), err
}
