package org.scrubline.casework.web;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.scrubline.casework.CaseFile;
import org.scrubline.casework.OpenSheet;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.entitlement.EntitlementWords;
import org.scrubline.entitlement.MayDo;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Component;

/** Says beside a case what its trainee may do, as the committee decided it. */
@Component
class CaseMayDo {

    private final EntitlementWords entitlements;
    private final Sheets sheets;
    private final Rubrics rubrics;
    private final People people;

    CaseMayDo(EntitlementWords entitlements, Sheets sheets, Rubrics rubrics, People people) {
        this.sheets = sheets;
        this.entitlements = entitlements;
        this.rubrics = rubrics;
        this.people = people;
    }

    /** One sentence for each trainee of a case; a trainee reads only the own one. */
    List<String> of(SignedIn who, CaseFile file) {
        boolean part = file.trainees().stream().anyMatch(one -> one.traineeId().equals(who.personId()));
        return file.trainees().stream()
                .filter(one -> !part || one.traineeId().equals(who.personId()))
                .map(trainee -> entitlements.about(trainee.name(), sentence(file.surgicalCase(), trainee.traineeId())))
                .toList();
    }

    /** The sentence for a case that waits to be scored. */
    String of(OpenSheet open) {
        return sentence(open.surgicalCase(), sheets.get(open.sheetId()).traineeId());
    }

    private String sentence(SurgicalCase one, UUID trainee) {
        String converted = one.convertedTo();
        return entitlements.sentence(
                one.programmeId(),
                trainee,
                rubrics.current(converted == null ? one.procedureCode() : converted)
                        .rubric()
                        .family(),
                one.band());
    }

    /** Everything the trainee of a case being entered may do; nothing while no trainee of the programme is chosen. */
    Optional<MayDo> of(SignedIn who, UUID programme, Typed typed) {
        Optional<UUID> trainee = typed.id("trainee")
                .filter(chosen -> people.holding(programme, Role.TRAINEE).stream()
                        .map(Person::id)
                        .anyMatch(chosen::equals));
        boolean own = trainee.isEmpty() && !who.has(Role.SUPERVISOR, programme) && who.has(Role.TRAINEE, programme);
        return (own ? Optional.of(who.personId()) : trainee).map(id -> entitlements.of(Set.of(programme), id));
    }
}
