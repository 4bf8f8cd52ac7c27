package org.scrubline.cohort;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.signal.TraineeCounts;
import org.scrubline.people.Characteristic;
import org.scrubline.people.Characteristics;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.Settings;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class ReadEquality implements Equality {

    private final ProgrammeReading reading;
    private final Characteristics characteristics;
    private final People people;
    private final Settings settings;

    ReadEquality(ProgrammeReading reading, Characteristics characteristics, People people, Settings settings) {
        this.reading = reading;
        this.characteristics = characteristics;
        this.people = people;
        this.settings = settings;
    }

    @Override
    public EqualityReport read(SignedIn who, @Nullable UUID programmeId) {
        List<Programme> readable = people.programmes().stream()
                .filter(programme -> who.has(Role.ANALYST, programme.id()))
                .sorted(Comparator.comparing(Programme::name).thenComparing(Programme::id))
                .toList();
        Programme programme = readable.stream()
                .filter(one -> programmeId == null || one.id().equals(programmeId))
                .findFirst()
                .orElseThrow(NotFound::new);
        ProgrammeSettings numbers = settings.of(programme.id());
        // The counts are made before the answers are read, and know nothing of them.
        List<TraineeCounts> counts = TraineeCounts.of(reading.read(programme.id(), numbers));
        Map<UUID, Map<Characteristic, String>> said = characteristics.ofTrainees(who, programme.id());
        Map<Characteristic, GroupTables> groups = new EnumMap<>(Characteristic.class);
        for (Characteristic one : Characteristic.values()) {
            groups.put(one, GroupTables.of(counts, one.answers(), answers(said, one), numbers.smallestGroup()));
        }
        return new EqualityReport(programme, readable, groups, numbers.smallestGroup());
    }

    private static Map<String, String> answers(Map<UUID, Map<Characteristic, String>> said, Characteristic one) {
        Map<String, String> answers = new HashMap<>();
        said.forEach((person, all) -> {
            if (all.containsKey(one)) {
                answers.put(person.toString(), all.get(one));
            }
        });
        return answers;
    }
}
