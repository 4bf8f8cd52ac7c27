package org.scrubline.notice;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.platform.Role;
import org.springframework.stereotype.Component;

/** Who can be reminded, and what time it is where they are. */
@Component
class Recipients {

    private final People people;
    private final NoticeSettingStore settings;

    Recipients(People people, NoticeSettingStore settings) {
        this.people = people;
        this.settings = settings;
    }

    /** A person to remind: the local time and the settings. */
    record Recipient(UUID personId, ZonedDateTime now, NoticeSettings settings) {
        boolean quiet() {
            return settings.quietAt(now.toLocalTime());
        }
    }

    /** Empty for somebody who has left, or supervises in no programme any more. */
    Optional<Recipient> find(UUID personId, Instant now) {
        return people.programmes().stream()
                .filter(programme -> supervises(programme, personId))
                .map(Programme::zone)
                .findFirst()
                .map(zone -> recipient(personId, now, zone));
    }

    private boolean supervises(Programme programme, UUID personId) {
        return people.holding(programme.id(), Role.SUPERVISOR).stream()
                .anyMatch(person -> person.id().equals(personId));
    }

    private Recipient recipient(UUID personId, Instant now, ZoneId zone) {
        return new Recipient(personId, now.atZone(zone), settings.of(personId).orElse(NoticeSettings.DEFAULTS));
    }
}
