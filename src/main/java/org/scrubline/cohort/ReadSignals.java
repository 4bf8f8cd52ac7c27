package org.scrubline.cohort;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.signal.Findings;
import org.scrubline.cohort.signal.ProgrammeRecord;
import org.scrubline.cohort.signal.ScorerFigures;
import org.scrubline.people.People;
import org.scrubline.people.Person;
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
class ReadSignals implements Signals {

    private final ProgrammeReading reading;
    private final People people;
    private final Settings settings;

    /** The last answer for each programme: the fits take a second or two, and the same record has the same findings. */
    private final Map<UUID, Answer> answers = new ConcurrentHashMap<>();

    private record Answer(ProgrammeRecord read, Findings findings) {}

    ReadSignals(ProgrammeReading reading, People people, Settings settings) {
        this.reading = reading;
        this.people = people;
        this.settings = settings;
    }

    @Override
    public SignalReport ofTrainees(SignedIn who, @Nullable UUID programmeId) {
        return report(who, programmeId, Role.DIRECTOR, Role.COMMITTEE_MEMBER);
    }

    @Override
    public SignalReport ofScorers(SignedIn who, @Nullable UUID programmeId) {
        return report(who, programmeId, Role.DIRECTOR);
    }

    @Override
    public OwnScoring own(SignedIn who, @Nullable UUID programmeId) {
        SignalReport report = report(who, programmeId, Role.SUPERVISOR);
        String self = who.personId().toString();
        List<ScorerFigures> all = report.findings().figures();
        return new OwnScoring(
                report,
                all.stream().filter(one -> one.scorer().equals(self)).findFirst(),
                all.stream()
                        .filter(one -> !one.scorer().equals(self))
                        .filter(ScorerFigures::enough)
                        .toList(),
                report.findings().scorers().stream()
                        .filter(signal -> signal.about().equals(self))
                        .toList());
    }

    private SignalReport report(SignedIn who, @Nullable UUID programmeId, Role... roles) {
        List<Programme> readable = people.programmes().stream()
                .filter(programme -> Stream.of(roles).anyMatch(role -> who.has(role, programme.id())))
                .sorted(Comparator.comparing(Programme::name).thenComparing(Programme::id))
                .toList();
        Programme programme = readable.stream()
                .filter(one -> programmeId == null || one.id().equals(programmeId))
                .findFirst()
                .orElseThrow(NotFound::new);
        ProgrammeSettings numbers = settings.of(programme.id());
        ProgrammeRecord read = reading.read(programme.id(), numbers);
        List<Person> training = people.holding(programme.id(), Role.TRAINEE);
        return new SignalReport(
                programme,
                readable,
                read,
                findings(programme.id(), read),
                named(training, read),
                training.stream().map(person -> person.id().toString()).collect(Collectors.toSet()),
                reading.stepNames(),
                numbers);
    }

    private Findings findings(UUID programme, ProgrammeRecord read) {
        Answer last = answers.get(programme);
        if (last != null && last.read.equals(read)) {
            return last.findings;
        }
        Answer answer = new Answer(read, Findings.of(read));
        answers.put(programme, answer);
        return answer.findings;
    }

    private Map<String, Person> named(List<Person> training, ProgrammeRecord read) {
        Map<String, Person> named = new HashMap<>();
        training.forEach(person -> named.put(person.id().toString(), person));
        Stream.concat(read.trainees().stream(), read.scorers().stream())
                .filter(id -> !named.containsKey(id))
                .forEach(id -> people.person(UUID.fromString(id)).ifPresent(person -> named.put(id, person)));
        return named;
    }
}
