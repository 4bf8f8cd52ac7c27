package org.scrubline.casework.web;

import java.util.UUID;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.Sheets;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Component;

/** Opens a supervisor's own draft; {@code NotFound} for anyone else. */
@Component
class Drafts {

    private final Sheets sheets;
    private final Cases cases;
    private final People people;
    private final Rubrics rubrics;
    private final RubricLibrary library;
    private final SheetWords words;

    Drafts(Sheets sheets, Cases cases, People people, Rubrics rubrics, RubricLibrary library, SheetWords words) {
        this.sheets = sheets;
        this.cases = cases;
        this.people = people;
        this.rubrics = rubrics;
        this.library = library;
        this.words = words;
    }

    Draft open(SignedIn scorer, UUID id) {
        Sheet sheet = sheets.openFor(scorer, id);
        return new Draft(
                sheet,
                cases.get(sheet.caseId()),
                people.person(sheet.traineeId())
                        .map(Person::printedName)
                        .map(words::shortName)
                        .orElseThrow(NotFound::new),
                cases.claimedPart(sheet.caseId(), sheet.traineeId()),
                rubrics.byId(sheet.rubricVersionId()).orElseThrow(NotFound::new).rubric(),
                library.events());
    }
}
