// Finds what a person would name by its role and name, as far as HTML and ARIA give them: an own, short reading of the rules
// in https://www.w3.org/TR/accname-1.2/ and https://www.w3.org/TR/html-aam-1.0/ for the elements that the app uses.
// Names are compared without spaces, since engines put them differently between elements. The value is a function of a
// document that gives the elements found, in order.
(() => {
	const bare = (text) => text.replace(/\s+/gu, "");
	const fields = ["textbox", "spinbutton", "searchbox", "combobox", "Date"];
	const inputs = {radio: "radio", checkbox: "checkbox", range: "slider", button: "button", submit: "button", file: "button", number: "spinbutton", search: "searchbox", date: "Date"};
	const tags = {BUTTON: "button", SUMMARY: "DisclosureTriangle", TEXTAREA: "textbox", SELECT: "combobox", FIELDSET: "group", DIALOG: "dialog", NAV: "navigation"};
	const role = (each) => {
		if (each.hasAttribute("role")) return each.getAttribute("role");
		if (each.tagName === "INPUT") return inputs[each.type] ?? "textbox";
		if (each.tagName === "A") return each.hasAttribute("href") ? "link" : "";
		return /^H[1-6]$/u.test(each.tagName) ? "heading" : tags[each.tagName] ?? "";
	};
	const written = (node) => {
		if (node.nodeType === Node.TEXT_NODE) return node.data;
		if (node.nodeType !== Node.ELEMENT_NODE || node.getAttribute("aria-hidden") === "true" || !node.checkVisibility()) return "";
		return node.getAttribute("aria-label") ?? node.getAttribute("alt") ?? [...node.childNodes].map(written).join(" ");
	};
	const name = (each) => {
		const by = each.getAttribute("aria-labelledby");
		if (by !== null) return by.split(" ").map((id) => document.getElementById(id)).filter((part) => part !== null).map((part) => part.textContent).join(" ");
		if (each.hasAttribute("aria-label")) return each.getAttribute("aria-label");
		if (each.tagName === "FIELDSET") return written(each.querySelector(":scope > legend") ?? each);
		if (each.labels !== undefined && each.labels !== null && each.labels.length > 0) return [...each.labels].map(written).join(" ");
		return each.matches("input, select, textarea") ? each.title : written(each);
	};
	return (roles, wanted, begins, root = document.body) => {
		const roleList = roles === "field" ? fields : roles.split("|");
		return [...root.querySelectorAll("a, button, summary, input, textarea, select, fieldset, dialog, nav, h1, h2, h3, h4, h5, h6, [role]")].filter((each) => {
			if (!roleList.includes(role(each)) || !each.checkVisibility({visibilityProperty: true}) || each.closest("[inert]") !== null) return false;
			const said = bare(name(each));
			return begins ? said.startsWith(bare(wanted)) : said === bare(wanted);
		});
	};
})()
