package org.scrubline.casework.web;

import java.util.List;
import org.scrubline.platform.FormView;

/**
 * A small form about a case.
 *
 * @param change what it says; the message keys end in its path
 * @param caseHref the case
 * @param caseTitle reference and procedure
 * @param form what was typed and what is wrong with it
 */
record ChangePage(CaseChange change, String caseHref, String caseTitle, FormView form, List<Field> fields) {

    /** How a field is answered. */
    enum Kind {
        SELECT,
        CHOICES,
        TEXT,
        DAY,
        MOMENT
    }

    /** One question; {@code options} is empty for text and moments. */
    record Field(Kind kind, String name, List<Option> options) {}

    /** Where the form is sent. */
    public String action() {
        return caseHref + "/" + change.path();
    }

    /** Beginning of the page's message keys. */
    public String key() {
        return "case.change." + change.path();
    }

    /** What is ticked among choices of one answer. */
    public List<String> chosen(String field) {
        String value = form.value(field);
        return value == null ? List.of() : List.of(value);
    }
}
