package org.scrubline.cohort;

import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.reference.ReferenceCases;
import org.scrubline.casework.reference.ScoredReference;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.scoring.reliability.SameWork;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** How alike supervisors scored the closed reference cases of a programme. */
@Service
@Transactional(readOnly = true)
public class ReferenceAgreement {

    private final ReferenceCases references;
    private final People people;

    ReferenceAgreement(ReferenceCases references, People people) {
        this.references = references;
        this.people = people;
    }

    /**
     * For one supervisor: the cases this supervisor scored.
     *
     * @param programme null for the first by name
     * @throws NotFound for anyone but a supervisor of the programme
     */
    public ReferenceReport own(SignedIn supervisor, @Nullable UUID programme) {
        List<Programme> readable = readable(supervisor, Role.SUPERVISOR);
        Programme of = chosen(readable, programme);
        return report(of, readable, references.comparable(supervisor, of.id()));
    }

    /**
     * For a director: all of them.
     *
     * @param programme null for the first by name
     * @throws NotFound for anyone but a director of the programme
     */
    public ReferenceReport all(SignedIn director, @Nullable UUID programme) {
        List<Programme> readable = readable(director, Role.DIRECTOR);
        Programme of = chosen(readable, programme);
        return report(of, readable, references.allComparable(director, of.id()));
    }

    private static ReferenceReport report(Programme programme, List<Programme> readable, List<ScoredReference> scored) {
        List<SameWork.Rating> ratings =
                scored.stream().flatMap(ReferenceAgreement::ratings).toList();
        return new ReferenceReport(programme, readable, scored, new SameWork(ratings));
    }

    private static Stream<SameWork.Rating> ratings(ScoredReference one) {
        String work = one.reference().id().toString();
        return one.scorings().stream()
                .flatMap(scoring -> scoring.levels().entrySet().stream()
                        .map(level -> new SameWork.Rating(
                                scoring.scorerId().toString(), work, level.getKey(), level.getValue())));
    }

    private List<Programme> readable(SignedIn who, Role role) {
        return people.programmes().stream()
                .filter(programme -> who.has(role, programme.id()))
                .sorted(Comparator.comparing(Programme::name).thenComparing(Programme::id))
                .toList();
    }

    private static Programme chosen(List<Programme> readable, @Nullable UUID programme) {
        return readable.stream()
                .filter(one -> programme == null || one.id().equals(programme))
                .findFirst()
                .orElseThrow(NotFound::new);
    }
}
