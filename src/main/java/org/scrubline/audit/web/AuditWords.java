package org.scrubline.audit.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.audit.AuditEntry;
import org.scrubline.platform.Audited;
import org.scrubline.platform.Role;
import org.scrubline.platform.Wording;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Says entries in sentences. */
@Component
class AuditWords {

    private static final List<String> WITH_ROLE = List.of("person-added", "role-given", "role-ended");

    private final Wording wording;

    AuditWords(Wording wording) {
        this.wording = wording;
    }

    String say(String key, Object... arguments) {
        return wording.text(key, arguments);
    }

    /** What was done, as a sentence; an action of a newer version is named as it is stored. */
    String sentence(AuditEntry entry) {
        String known = Actions.KNOWN.contains(entry.action()) ? entry.action() : "other";
        return say(
                "audit.action." + known,
                name(entry.actor()),
                name(entry.about()),
                label(entry.item()),
                text(entry.before()),
                value(entry),
                entry.action());
    }

    /** What kind of thing was done, for choosing one. */
    String action(String action) {
        return say("audit.kind." + action);
    }

    String name(AuditEntry.@Nullable Named person) {
        return person == null ? say("audit.server") : person.name();
    }

    String roles(List<Role> roles) {
        return roles.stream().map(role -> say(role.messageKey())).collect(Collectors.joining(", "));
    }

    /** Minute on a programme's clock, with its zone. */
    String at(Instant instant, ZoneId zone) {
        return DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", LocaleContextHolder.getLocale())
                .format(instant.atZone(zone));
    }

    /** A setting or a family is stored under its key, which a release may still know. */
    private String label(Audited.Item item) {
        return switch (item.kind()) {
            case "programme-setting" -> wording.textOr("setting.name." + item.label(), item.label());
            case "exposure-plan" -> wording.textOr("rubric.family." + item.label(), item.label());
            default -> item.label();
        };
    }

    private String value(AuditEntry entry) {
        String after = text(entry.after());
        if (entry.item().kind().equals("training-entry")) {
            return wording.textOr("training.audit." + after, after);
        }
        if (entry.action().equals("person-invited")) {
            return wording.textOr("people.invitation." + after, after);
        }
        return WITH_ROLE.contains(entry.action()) ? say("role." + after) : after;
    }

    private static String text(@Nullable String stored) {
        return stored == null ? "" : stored;
    }
}
