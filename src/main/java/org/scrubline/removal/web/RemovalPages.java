package org.scrubline.removal.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Programme;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.removal.EndedTerm;
import org.scrubline.removal.RemovalFile;
import org.scrubline.removal.RemovalIntent;
import org.scrubline.removal.RemovalIntent.Act;
import org.scrubline.removal.Removals;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Makes the pages of removals. */
@Component
class RemovalPages {

    private final Removals removals;
    private final Passkeys passkeys;
    private final Wording wording;

    RemovalPages(Removals removals, Passkeys passkeys, Wording wording) {
        this.removals = removals;
        this.passkeys = passkeys;
        this.wording = wording;
    }

    /** The list: whose term is over, what waits for a second person, what was removed. */
    record Page(String programme, List<Ended> ended, List<Waiting> waiting, List<String> removed) {}

    /** A trainee whose term is over; {@code href} is the form that asks, null while a hold or a request stands. */
    record Ended(
            String text, @Nullable String note, @Nullable String href) {}

    /** A request; {@code href} is the form that confirms, null for whoever asked. */
    record Waiting(String text, String reason, @Nullable String href) {}

    /**
     * One form.
     *
     * @param asks whether a reason is asked for
     * @param ask what to ask the reader's passkeys; null when there are none
     */
    record Form(
            String title,
            String lede,
            String about,
            String action,
            boolean asks,
            String submit,
            Passkeys.@Nullable Ask ask) {}

    Page page(SignedIn who, Programme programme) {
        List<RemovalFile> files = removals.files(who, programme.id());
        return new Page(
                programme.name(),
                removals.ended(who, programme.id()).stream()
                        .map(ended -> ended(ended, files, programme.zone()))
                        .toList(),
                files.stream()
                        .filter(file -> file.removed() == null)
                        .map(file -> waiting(who, file, programme.zone()))
                        .toList(),
                files.stream()
                        .flatMap(file -> removed(file, programme.zone()).stream())
                        .toList());
    }

    private Ended ended(EndedTerm ended, List<RemovalFile> files, ZoneId zone) {
        boolean asked = files.stream()
                .anyMatch(file -> file.removed() == null && file.trainee().equals(ended.trainee()));
        String note = ended.held() ? "removal.held" : asked ? "removal.asked" : null;
        return new Ended(
                about(ended, zone),
                note == null ? null : wording.text(note),
                note == null ? "/removals/trainees/" + ended.trainee() : null);
    }

    private String about(EndedTerm ended, ZoneId zone) {
        return wording.text("removal.ended.line", ended.name(), ended.records(), day(ended.since(), zone));
    }

    private Waiting waiting(SignedIn who, RemovalFile file, ZoneId zone) {
        return new Waiting(
                wording.text("removal.waiting.line", file.traineeName(), file.askedName(), day(file.askedAt(), zone)),
                file.reason(),
                file.askedBy().equals(who.personId()) ? null : "/removals/" + file.request());
    }

    private Optional<String> removed(RemovalFile file, ZoneId zone) {
        return Optional.ofNullable(file.removed())
                .map(removed -> wording.text(
                        "removal.removed.line",
                        file.traineeName(),
                        removed.records(),
                        day(removed.at(), zone),
                        file.askedName(),
                        removed.name()));
    }

    /** Asks for the records of one of the trainees whose term is over. */
    Optional<Form> asking(SignedIn who, Programme programme, UUID trainee) {
        return removals.ended(who, programme.id()).stream()
                .filter(ended -> ended.trainee().equals(trainee))
                .findFirst()
                .map(ended -> new Form(
                        wording.text("removal.ask.title"),
                        wording.text("removal.ask.lede"),
                        about(ended, programme.zone()),
                        "/removals/trainees/" + trainee,
                        true,
                        wording.text("removal.ask.submit"),
                        ask(who, Act.REMOVAL_ASKED, trainee)));
    }

    /** Confirms a request. */
    Optional<Form> confirming(SignedIn who, Programme programme, UUID request) {
        return removals.files(who, programme.id()).stream()
                .filter(file -> file.request().equals(request) && file.removed() == null)
                .findFirst()
                .map(file -> new Form(
                        wording.text("removal.confirm.title"),
                        wording.text("removal.confirm.lede"),
                        waiting(who, file, programme.zone()).text() + " " + file.reason(),
                        "/removals/" + request,
                        false,
                        wording.text("removal.confirm.submit"),
                        ask(who, Act.REMOVAL_CONFIRMED, request)));
    }

    private Passkeys.@Nullable Ask ask(SignedIn who, Act act, UUID subject) {
        return passkeys.ask(who.accountId(), RemovalIntent.of(act, subject).challenge())
                .orElse(null);
    }

    private static String day(Instant instant, ZoneId zone) {
        return DateTimeFormatter.ofPattern("d MMM uuuu", LocaleContextHolder.getLocale())
                .format(instant.atZone(zone));
    }
}
