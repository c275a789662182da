package cli

import (
	"rimside/server/words"
	"rimside/store/sqlite"
)

// said is everything that the command tells people, by what it is about. What the log on stderr says is English alone.
var said = map[string]words.Text{
	"usage":       {"Rimside: a pocket wheel book.\n\nusage: rimside [command] [flags]\n\n", "Rimside: ein Laufradbuch für die Tasche.\n\nAufruf: rimside [Befehl] [Optionen]\n\n"},
	"usage.of":    {"usage: rimside {command}\n", "Aufruf: rimside {command}\n"},
	"usage.serve": {"\nflags of serve:\n", "\nOptionen von serve:\n"},
	"usage.flag":  {"or set {variable}", "oder setz {variable}"},
	"mistake":     {"{why}; see rimside help", "{why}; siehe rimside help"},
	"command.none": {
		"there is no command {name}; see rimside help",
		"es gibt keinen Befehl {name}; siehe rimside help",
	},
	"variable": {"the variable {variable} cannot be {value}: {why}", "die Variable {variable} kann nicht {value} sein: {why}"},

	"serve":    {"serve the app and its calculations (the default)", "die App und ihre Berechnungen bereitstellen (wenn nichts angegeben ist)"},
	"backup":   {"FILE: write everything in the data folder into one file", "FILE: alles im Datenordner in eine Datei sichern"},
	"restore":  {"FILE: make a data folder of a backup", "FILE: aus einer Sicherung einen Datenordner machen"},
	"export":   {"FILE: write the book's entries as text, one a line", "FILE: die Einträge des Buchs als Text schreiben, je einen in einer Zeile"},
	"import":   {"FILE: take an exported file in", "FILE: eine exportierte Datei importieren"},
	"verify":   {"check everything in the data folder", "alles im Datenordner prüfen"},
	"pair":     {"print a code that lets a phone in", "einen Code ausgeben, mit dem ein Telefon gekoppelt wird"},
	"erasures": {"list what waits to be erased; -agree or -stop decides", "auflisten, was auf das Löschen wartet; -agree oder -stop entscheidet"},
	"site":     {"DIR: write the app as static files for any https host", "DIR: die App als feste Dateien für einen beliebigen https-Host schreiben"},
	"version":  {"print the program's version", "die Version des Programms ausgeben"},
	"licences": {"print what the program is made with, and on what terms", "ausgeben, womit das Programm gemacht ist und zu welchen Bedingungen"},

	"flag.addr": {
		"listen on `HOST:PORT`; " + usualAddress + ", or " + demoAddress + " with -demo, if not given",
		"auf `HOST:PORT` lauschen; ohne Angabe " + usualAddress + ", mit -demo " + demoAddress,
	},
	"flag.data": {
		"keep the book's file in the folder `DIR`; your own data folder if not given",
		"die Datei des Buchs im Ordner `DIR` halten; ohne Angabe in deinem eigenen Datenordner",
	},
	"flag.lan": {
		"serve phones in the same network, over https with an authority of its own; " + lanAddress + " if -addr is not given",
		"Telefone im selben Netz bedienen, über https mit eigener Zertifizierungsstelle; ohne -addr auf " + lanAddress,
	},
	"flag.name": {
		"the one `HOST` or HOST:PORT that phones open; this machine's name and .local if not given",
		"der eine `HOST` oder HOST:PORT, den Telefone öffnen; ohne Angabe der Name dieses Rechners und .local",
	},
	"flag.login": {"have everybody paired, also on this machine", "alle müssen gekoppelt sein, auch auf diesem Rechner"},
	"flag.cert": {
		"serve https with the certificate in `FILE`, read again when it changes; with -key",
		"https mit dem Zertifikat in `FILE`, neu gelesen, wenn es sich ändert; mit -key",
	},
	"flag.key": {"the key in `FILE` of the certificate", "der Schlüssel des Zertifikats in `FILE`"},
	"flag.proxy": {
		"a proxy in front speaks https and is believed about who comes; with -name",
		"ein Proxy davor spricht https, und ihm wird geglaubt, wer kommt; mit -name",
	},
	"flag.demo": {
		"show an invented event to try the app with; its book ends with the program unless -data names a folder",
		"ein erfundenes Rennen zum Ausprobieren zeigen; sein Buch endet mit dem Programm, wenn -data keinen Ordner nennt",
	},
	"flag.dev": {"log every request", "jede Anfrage ins Protokoll schreiben"},
	"flag.book": {
		"the folder `DIR` that holds the book; your own data folder if not given",
		"der Ordner `DIR` mit dem Buch; ohne Angabe dein eigener Datenordner",
	},
	"flag.keys": {
		"sign sessions with a new key from the next start on; done twice in a row, every phone has to be paired anew",
		"Sitzungen ab dem nächsten Start mit einem neuen Schlüssel unterschreiben; zweimal nacheinander, und jedes Telefon muss neu gekoppelt werden",
	},
	"flag.agree": {
		"let all of them pass: when the phone that erased comes by next, the records are gone everywhere",
		"allen zustimmen: Wenn das Telefon, das gelöscht hat, wieder vorbeikommt, sind die Datensätze überall weg",
	},
	"flag.stop": {"say no to all of them: the records stay here", "alle ablehnen: Die Datensätze bleiben hier"},

	"at": {"Rimside is at {url}", "Rimside ist hier: {url}"},
	"trust": {
		"Phones learn to trust it at {page}\nThe fingerprint they must see there: {fingerprint}",
		"Telefone lernen hier, ihm zu vertrauen: {page}\nDiesen Fingerabdruck müssen sie dort zeigen: {fingerprint}",
	},
	"another": {
		"To let in another phone: Settings, Phones on a paired one, or rimside pair here",
		"Ein weiteres Telefon koppeln: auf einem gekoppelten unter Einstellungen, Telefone, oder hier mit rimside pair",
	},
	"code": {"Pairing code: {code}, good for one phone until {time}", "Code zum Koppeln: {code}, gilt für ein Telefon bis {time}"},
	"keys": {
		"A new key signs the sessions from the next start of the server on. Make sibling servers anew from a backup.",
		"Ab dem nächsten Start des Servers unterschreibt ein neuer Schlüssel die Sitzungen. Mach Schwesterserver aus einer Sicherung neu.",
	},

	"backup.done": {
		"The book in {data} is backed up in {file}: keep it where only you can read it",
		"Das Buch in {data} ist in {file} gesichert: Bewahr die Datei dort auf, wo nur du sie lesen kannst",
	},
	"restore.done": {
		"The book of {file} is restored in {data}: start rimside, and phones that meet it send what it lacks",
		"Das Buch aus {file} ist in {data} wiederhergestellt: Starte rimside, und Telefone, die vorbeikommen, schicken, was fehlt",
	},
	"export.done":    {"The book in {data} is exported to {file}", "Das Buch in {data} ist nach {file} exportiert"},
	"export.cannot":  {"the file cannot be written: {why}", "die Datei lässt sich nicht schreiben: {why}"},
	"import.cannot":  {"the file cannot be read: {why}", "die Datei lässt sich nicht lesen: {why}"},
	"import.done":    {"{new} entries are new here, {known} were known", "{new|Eintrag ist|Einträge sind} hier neu, {known|war|waren} bekannt"},
	"import.refused": {"refused: {id} {why}", "abgelehnt: {id} {why}"},
	"import.some": {
		"{n} entries were refused, all others are in: see the list above",
		"{n|Eintrag wurde|Einträge wurden} abgelehnt, alle anderen sind drin: siehe die Liste oben",
	},
	"verify.remark":  {"remark: {text}", "Hinweis: {text}"},
	"verify.problem": {"wrong: {text}", "fehlerhaft: {text}"},
	"verify.wrong": {
		"{n} things are wrong in {data}, see the list above. Entries and photos that are damaged a running server mends with the phones' help. For all else: {mend}",
		"{n|Fehler|Fehler} in {data}, siehe die Liste oben. Beschädigte Einträge und Fotos repariert ein laufender Server mit Hilfe der Telefone. Für alles andere: {mend}",
	},
	"mend": {
		sqlite.HowToMend,
		"Halt den Server an. Verschieb rimside.sqlite, rimside.sqlite-wal und rimside.sqlite-shm, soweit sie da sind, aus dem Datenordner. Führ dann rimside restore FILE mit einer Sicherung aus, oder kopier die neueste Datei des Ordners copies nach rimside.sqlite. Was dann fehlt, kommt von den Telefonen zurück.",
	},
	"verify.sound": {
		"The book in {data} is sound: {ops} entries, {records} records, {photos} photos",
		"Das Buch in {data} ist in Ordnung: {ops|Eintrag|Einträge}, {records|Datensatz|Datensätze}, {photos|Foto|Fotos}",
	},
	"erasures.stopped": {"Stopped: the records stay.", "Abgelehnt: Die Datensätze bleiben."},
	"erasures.agreed": {
		"Agreed: the records are erased when the phone comes by next.",
		"Zugestimmt: Die Datensätze werden gelöscht, wenn das Telefon wieder vorbeikommt.",
	},
	"erasures.none":    {"No erasures wait.", "Nichts wartet auf das Löschen."},
	"erasures.unnamed": {"A phone without a name", "Ein Telefon ohne Namen"},
	"erasures.waits": {
		"{name} wants to erase {n} records, since {since}",
		"{name} will {n|Datensatz|Datensätze} löschen, seit {since}",
	},
	"erasures.halted": {
		"{name} wants to erase {n} records, since {since}, stopped",
		"{name} will {n|Datensatz|Datensätze} löschen, seit {since}, abgelehnt",
	},
	"site.done": {
		"Version {version} of the app is in {dir}: {n} files, for any https host",
		"Version {version} der App ist in {dir}: {n|Datei|Dateien}, für einen beliebigen https-Host",
	},
	"unbuilt": {"unbuilt (run go generate ./...)", "nicht gebaut (führ go generate ./... aus)"},

	"erasures.misused": {"erasures takes -data, and one of -agree and -stop", "erasures nimmt -data und eins von -agree und -stop"},
	"misused.file": {
		"{command} needs one file: rimside {command} [-data DIR] FILE",
		"{command} braucht eine Datei: rimside {command} [-data DIR] FILE",
	},
	"misused.flags": {"{command} takes flags only, not {given}", "{command} nimmt nur Optionen, nicht {given}"},
	"misused.serve": {"serve takes flags only, not {given}; see rimside help", "serve nimmt nur Optionen, nicht {given}; siehe rimside help"},
	"licences.none": {
		"this program was built from a checkout, not by a release: go.mod names what it is made with, and each of those brings its licence; a release (go run ./.ci/release VERSION) puts them all together",
		"dieses Programm wurde aus den Quellen gebaut, nicht als Ausgabe: go.mod nennt, womit es gemacht ist, und jedes davon bringt seine Lizenz mit; eine Ausgabe (go run ./.ci/release VERSION) stellt sie alle zusammen",
	},
	"misused.licences": {"licences takes no arguments, not {given}", "licences nimmt keine Angaben, auch nicht {given}"},
	"misused.version":  {"version takes no arguments, not {given}", "version nimmt keine Angaben, auch nicht {given}"},
	"misused.site":     {"site needs the one folder to write: rimside site DIR", "site braucht den einen Ordner zum Schreiben: rimside site DIR"},
	"misused.addr": {
		"-addr cannot be {given}: give a host and a port up to 65535, such as " + usualAddress,
		"-addr kann nicht {given} sein: Gib einen Host und einen Port bis 65535 an, wie " + usualAddress,
	},
	"misused.cert": {
		"-cert and -key go together: the certificate's file and its key's file, both in PEM",
		"-cert und -key gehören zusammen: die Datei des Zertifikats und die seines Schlüssels, beide in PEM",
	},
	"misused.lan": {
		"-lan makes a certificate by itself: leave out -cert and -key, or leave out -lan",
		"-lan macht selbst ein Zertifikat: Lass -cert und -key weg, oder lass -lan weg",
	},
	"misused.proxy": {
		"behind a proxy it is the proxy that speaks https: leave out -lan, -cert and -key",
		"hinter einem Proxy spricht der Proxy https: Lass -lan, -cert und -key weg",
	},
	"misused.unnamed": {
		"-behind-proxy needs -name HOST: the name that browsers ask the proxy for",
		"-behind-proxy braucht -name HOST: den Namen, nach dem Browser den Proxy fragen",
	},
	"misused.name": {
		"-name cannot be {given}: give a host's name, with a port if need be, such as car.local:7467",
		"-name kann nicht {given} sein: Gib den Namen eines Hosts an, wenn nötig mit Port, wie car.local:7467",
	},
	"misused.public": {
		"-name cannot be {given} with -lan: of addresses only private ones can be vouched for, such as 192.168.1.20",
		"-name kann mit -lan nicht {given} sein: Von Adressen lässt sich nur für private bürgen, wie 192.168.1.20",
	},

	"addr.taken": {
		"{addr} is taken by another program, perhaps by Rimside itself: stop that one, or choose another port with -addr",
		"{addr} ist von einem anderen Programm belegt, vielleicht von Rimside selbst: Halt das andere an, oder wähle mit -addr einen anderen Port",
	},
	"addr.forbidden": {
		"this account may not listen on {addr}: choose a port above 1023 with -addr",
		"dieses Konto darf nicht auf {addr} lauschen: Wähle mit -addr einen Port über 1023",
	},
	"addr.cannot": {
		"cannot listen on {addr}: choose an address of this machine with -addr ({why})",
		"auf {addr} lässt sich nicht lauschen: Wähle mit -addr eine Adresse dieses Rechners ({why})",
	},
	"trust.cannot": {
		"the page on which phones learn to trust this server needs the port {port}: {why}",
		"die Seite, auf der Telefone diesem Server vertrauen lernen, braucht den Port {port}: {why}",
	},
	"data.none": {
		"this account has no data folder: say with -data DIR where the book's file may live",
		"dieses Konto hat keinen Datenordner: Sag mit -data DIR, wo die Datei des Buchs liegen darf",
	},
	"data.unmade": {
		"the data folder cannot be made: choose another with -data DIR ({why})",
		"der Datenordner lässt sich nicht anlegen: Wähle mit -data DIR einen anderen ({why})",
	},
	"data.readonly": {
		"the data folder is not writable: make it so, or choose another with -data DIR ({why})",
		"in den Datenordner lässt sich nicht schreiben: Mach ihn beschreibbar, oder wähle mit -data DIR einen anderen ({why})",
	},
	"data.unread":   {"the data folder cannot be read: {why}", "der Datenordner lässt sich nicht lesen: {why}"},
	"data.unlocked": {"the data folder cannot be locked: {why}", "der Datenordner lässt sich nicht sperren: {why}"},
	"data.served": {
		"another Rimside serves {dir} already: stop that one, or give this one a folder of its own with -data DIR",
		"ein anderes Rimside arbeitet schon mit {dir}: Halt es an, oder gib diesem mit -data DIR einen eigenen Ordner",
	},
	"data.bookless": {
		"there is no book in {dir}: name the folder that holds one with -data DIR",
		"in {dir} ist kein Buch: Nenn mit -data DIR den Ordner, in dem eins ist",
	},
	"data.demo": {"the demo's folder cannot be made: {why}", "der Ordner der Demo lässt sich nicht anlegen: {why}"},
	"site.unbuilt": {
		"the app is not built: run go generate ./..., then build rimside again",
		"die App ist nicht gebaut: Führ go generate ./... aus und bau dann rimside neu",
	},
	"site.headless": {
		"{page} of the built app has no <head> to put the policy into; give pwa/src its template one",
		"{page} der gebauten App hat kein <head> für die Richtlinie; gib der Vorlage in pwa/src eins",
	},
	"site.unmade": {"the site's folder cannot be made: choose another ({why})", "der Ordner der Website lässt sich nicht anlegen: Wähle einen anderen ({why})"},
	"site.unread": {"the site's folder cannot be read: choose another ({why})", "der Ordner der Website lässt sich nicht lesen: Wähle einen anderen ({why})"},
	"site.other": {
		"{dir} holds files that are not an earlier site: choose an empty folder",
		"in {dir} liegen Dateien, die keine frühere Website sind: Wähle einen leeren Ordner",
	},
}
