package org.scrubline.progress;

import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.signoff.SignedSheets;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Renews the population values of a programme and procedure, one transaction each. */
@Service
@Transactional
class Refits {

    private final SignedSheets sheets;
    private final People people;
    private final PopulationFits fits;

    Refits(SignedSheets sheets, People people, PopulationFits fits) {
        this.sheets = sheets;
        this.people = people;
        this.fits = fits;
    }

    /**
     * Fits all counted sheets of this moment when the stored fit has not seen at least so many of them.
     *
     * @param unseen 1 or more
     */
    public void ifUnseen(int unseen, UUID programmeId, String procedureCode) {
        if (fits.unseen(programmeId, procedureCode) >= unseen) {
            ProgrammeScores scores = ProgrammeScores.of(
                    sheets.ofProgramme(programmeId, procedureCode), people.priorExperience(procedureCode));
            fits.renew(programmeId, procedureCode, scores);
        }
    }
}
