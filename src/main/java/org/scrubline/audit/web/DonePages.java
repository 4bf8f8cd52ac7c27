package org.scrubline.audit.web;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.audit.AuditLog;
import org.scrubline.audit.AuditSlice;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.RefusedLogins.Refused;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableView;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Component;

/** Makes the page of what was done. */
@Component
class DonePages {

    /** Refusals of one name that look like guessing: more than anybody's own slips (common practice, no source). */
    private static final int MANY = 20;

    private static final AuditSlice NOTHING = new AuditSlice(List.of(), null, null);

    private final AuditLog log;
    private final People people;
    private final AuditTables tables;
    private final AuditWords words;
    private final Wording wording;

    DonePages(AuditLog log, People people, AuditTables tables, AuditWords words, Wording wording) {
        this.log = log;
        this.people = people;
        this.tables = tables;
        this.words = words;
        this.wording = wording;
    }

    DonePage page(SignedIn who, Programme programme, DoneForm form, AuditSlice slice) {
        return page(who, programme, form, slice, List.of());
    }

    DonePage refused(SignedIn who, Programme programme, DoneForm form, List<Refusal> reasons) {
        return page(who, programme, form, NOTHING, reasons);
    }

    private DonePage page(SignedIn who, Programme programme, DoneForm form, AuditSlice slice, List<Refusal> reasons) {
        List<Refused> refusals = log.refusedLogins(who, programme.id());
        return new DonePage(
                programme.name(),
                new FormView(form.typed(), wording.errors(reasons)),
                persons(programme),
                Stream.concat(
                                Stream.of(new DonePage.Option(Actions.SECURITY, words.say("audit.security.choice"))),
                                Actions.KNOWN.stream().map(action -> new DonePage.Option(action, words.action(action))))
                        .toList(),
                !form.typed().isEmpty(),
                slice.entries().isEmpty() ? null : tables.done(slice.entries(), programme.zone()),
                Pager.of(slice, "/done", form.query()),
                "/done.csv?" + form.query(),
                refused(refusals, programme),
                refusals.stream().anyMatch(one -> one.wrong() + one.blocked() >= MANY));
    }

    private @Nullable TableView refused(List<Refused> refusals, Programme programme) {
        return refusals.isEmpty() ? null : tables.refused(refusals, programme.zone());
    }

    private List<DonePage.Option> persons(Programme programme) {
        return Arrays.stream(Role.values())
                .flatMap(role -> people.holding(programme.id(), role).stream())
                .distinct()
                .sorted(Comparator.comparing(Person::printedName).thenComparing(Person::id))
                .map(person -> new DonePage.Option(person.id().toString(), person.printedName()))
                .toList();
    }
}
