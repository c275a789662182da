package trust

import (
	"html"
	"strings"

	"rimside/server/words"
)

// filler puts the words of a language into a template; each text and value goes in as text, never as markup.
func filler(language string, values map[string]string) *strings.Replacer {
	pairs := []string{"{language}", language}
	for key, text := range pageWords {
		pairs = append(pairs, "{"+key+"}", html.EscapeString(text.In(language)))
	}
	for key, value := range values {
		pairs = append(pairs, "{"+key+"}", html.EscapeString(value))
	}
	return strings.NewReplacer(pairs...)
}

// pageWords are all texts of the page. Those named "…shown" stand in a drawing of a phone: a line of them has little room.
var pageWords = map[string]words.Text{
	"title":   {"Trust this Rimside server", "Diesem Rimside-Server vertrauen"},
	"heading": {"Trust this Rimside server, once per phone", "Diesem Rimside-Server vertrauen, einmal je Telefon"},

	"why": {"Why", "Warum"},
	"why.text": {
		"A phone only keeps an app for times without signal when it came over a connection that it trusts. This server made an authority of its own for that. It can vouch for this server’s one name and for private addresses, for nothing else: no other site can be copied with it.",
		"Ein Telefon behält eine App für Zeiten ohne Empfang nur, wenn sie über eine Verbindung kam, der es vertraut. Dieser Server hat sich dafür eine eigene Zertifizierungsstelle gemacht. Sie kann für den einen Namen dieses Servers und für private Adressen bürgen, für nichts sonst: Keine andere Website lässt sich damit nachmachen.",
	},
	"why.home": {"Do this at home, on a network that you trust.", "Mach das zu Hause, in einem Netz, dem du vertraust."},

	"get":       {"Get the certificate", "Zertifikat holen"},
	"get.title": {"1. Get the certificate", "1. Das Zertifikat holen"},
	"get.compare": {
		"Before you trust it, compare its SHA-256 fingerprint with the one that the server’s own screen shows. If they differ, somebody is in between: stop.",
		"Bevor du ihm vertraust, vergleich seinen SHA-256-Fingerabdruck mit dem, den der Server auf seinem eigenen Bildschirm zeigt. Sind sie verschieden, ist jemand dazwischen: Hör auf.",
	},

	"ios": {"2. On an iPhone or iPad", "2. Auf einem iPhone oder iPad"},
	"ios.get": {
		"Tap “Get the certificate” above, in the phone’s own browser, and allow the download.",
		"Tipp oben auf „Zertifikat holen“, im eigenen Browser des Telefons, und erlaube das Laden.",
	},
	"ios.allow.shown": {"Allow", "Zulassen"},
	"ios.install": {
		"Open the phone’s Settings. Near the top it says that a profile was downloaded: open it and tap Install. Compare the fingerprint under More Details with the one on the server’s own screen.",
		"Öffne die Einstellungen des Telefons. Oben steht, dass ein Profil geladen wurde: Öffne es und tipp auf Installieren. Vergleich den Fingerabdruck unter „Mehr Details“ mit dem auf dem eigenen Bildschirm des Servers.",
	},
	"ios.settings.shown": {"Settings", "Einstellungen"},
	"ios.profile.shown":  {"Profile Downloaded", "Profil geladen"},
	"ios.install.shown":  {"Install", "Installieren"},
	"ios.trust": {
		"In Settings, go to General, About, Certificate Trust Settings, at the very end.",
		"Geh in den Einstellungen zu Allgemein, Info, Zertifikats\u00advertrauens\u00adeinstellungen, ganz am Ende.",
	},
	"ios.general.shown": {"General", "Allgemein"},
	"ios.about.shown":   {"About", "Info"},
	"ios.trust.shown":   {"Trust Settings", "Zertifikatsver…"},
	"ios.on":            {"Switch this authority on. Then open the app below.", "Schalte diese Zertifizierungsstelle ein. Öffne dann unten die App."},

	"android":                 {"2. On an Android phone", "2. Auf einem Android-Telefon"},
	"android.get":             {"Tap “Get the certificate” above. It lands among the downloads.", "Tipp oben auf „Zertifikat holen“. Es landet bei den Downloads."},
	"android.downloads.shown": {"Downloads", "Downloads"},
	"android.find": {
		"Open the phone’s Settings and search for “CA certificate”: it is under Security, Encryption and credentials, Install a certificate.",
		"Öffne die Einstellungen des Telefons und such nach „CA-Zertifikat“: Es steht unter Sicherheit, Verschlüsselung und Anmeldedaten, Zertifikat installieren.",
	},
	"android.security.shown":    {"Security", "Sicherheit"},
	"android.credentials.shown": {"Credentials", "Anmeldedaten"},
	"android.ca.shown":          {"CA certificate", "CA-Zertifikat"},
	"android.warns": {
		"The phone warns that others could read along: that is so for authorities that vouch for every site. This one can vouch for this server only. Choose the file.",
		"Das Telefon warnt, dass andere mitlesen könnten: Das gilt für Zertifizierungsstellen, die für jede Website bürgen. Diese kann nur für diesen Server bürgen. Wähle die Datei.",
	},
	"android.anyway.shown": {"Install anyway", "Trotzdem"},
	"android.compare": {
		"Compare the fingerprint in the list of trusted credentials, User, with the one on the server’s own screen. Then open the app below.",
		"Vergleich den Fingerabdruck in der Liste der vertrauenswürdigen Anmeldedaten, Nutzer, mit dem auf dem eigenen Bildschirm des Servers. Öffne dann unten die App.",
	},
	"android.trusted.shown": {"Trusted", "Vertrauenswürdig"},
	"android.user.shown":    {"User", "Nutzer"},
	"android.differ": {
		"The words differ a little from phone to phone. On a computer, give the authorities of the browser this file:",
		"Die Wörter sind von Telefon zu Telefon etwas verschieden. Gib auf einem Computer diese Datei den Zertifizierungsstellen des Browsers:",
	},
	"android.pem": {"the certificate as text", "das Zertifikat als Text"},

	"open":    {"3. Open the app, and install it", "3. Die App öffnen und installieren"},
	"open.qr": {"The same address as a QR code", "Dieselbe Adresse als QR-Code"},
	"open.pair": {
		"Install it from there, then pair it inside the installed app: Settings, Phones.",
		"Installiere sie von dort und kopple sie dann in der installierten App: Einstellungen, Telefone.",
	},
}
