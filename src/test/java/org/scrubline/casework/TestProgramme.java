package org.scrubline.casework;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.TestOrganisations.TestOrganisation;

/** A programme in which cases happen: a trainee, two supervisors, a director and the shipped rubrics. */
public final class TestProgramme {

    private final TestOrganisation organisation;
    private final SignedIn trainee;
    private final SignedIn supervisor;
    private final SignedIn director;

    private TestProgramme(TestOrganisation organisation) {
        this.organisation = organisation;
        this.trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        this.supervisor = organisation.join("Dr Ottilie Brannock", Role.SUPERVISOR);
        this.director = organisation.join("Dr Corisande Delmarr", Role.DIRECTOR);
    }

    public static TestProgramme open(TestOrganisation organisation, Rubrics rubrics) {
        TestProgramme here = new TestProgramme(organisation);
        organisation.in(() -> rubrics.publishLibrary(here.director.personId()).orThrow());
        return here;
    }

    public TestOrganisation organisation() {
        return organisation;
    }

    public UUID programme() {
        return organisation.programme().id();
    }

    public SignedIn trainee() {
        return trainee;
    }

    public SignedIn supervisor() {
        return supervisor;
    }

    public SignedIn director() {
        return director;
    }

    public SignedIn another(String name, Role role) {
        return organisation.join(name, role);
    }

    /** A case of the trainee with the supervisor, right eye, fornix-based, no factors. */
    public Entry entry(String reference, @Nullable Instant endedAt) {
        return new Entry(reference, endedAt);
    }

    /** An entry under construction. */
    public final class Entry {

        private String reference;
        private @Nullable Instant endedAt;
        private UUID programmeId = organisation.programme().id();
        private UUID traineeId = trainee.personId();
        private UUID supervisorId = supervisor.personId();
        private UUID siteId = organisation.site().id();
        private String procedure = Procedures.TRAB_FORNIX;
        private Eye eye = Eye.RIGHT;
        private Part part = Part.WHOLE_CASE;
        private List<String> factors = List.of();
        private @Nullable UUID secondEyeOf;
        private @Nullable LocalDate plannedOn;

        Entry(String reference, @Nullable Instant endedAt) {
            this.reference = reference;
            this.endedAt = endedAt;
        }

        public Entry reference(String value) {
            reference = value;
            return this;
        }

        public Entry endedAt(Instant value) {
            endedAt = value;
            return this;
        }

        public Entry programme(UUID value) {
            programmeId = value;
            return this;
        }

        public Entry trainee(SignedIn value) {
            traineeId = value.personId();
            return this;
        }

        public Entry supervisor(UUID value) {
            supervisorId = value;
            return this;
        }

        public Entry supervisor(SignedIn value) {
            return supervisor(value.personId());
        }

        public Entry site(UUID value) {
            siteId = value;
            return this;
        }

        public Entry procedure(String value) {
            procedure = value;
            return this;
        }

        public Entry eye(Eye value) {
            eye = value;
            return this;
        }

        public Entry part(Part value) {
            part = value;
            return this;
        }

        public Entry factors(String... values) {
            factors = List.of(values);
            return this;
        }

        public Entry secondEyeOf(UUID value) {
            secondEyeOf = value;
            return this;
        }

        public Entry plannedOn(LocalDate value) {
            plannedOn = value;
            return this;
        }

        public CaseEntry done() {
            return new CaseEntry(
                    programmeId,
                    traineeId,
                    supervisorId,
                    siteId,
                    reference,
                    procedure,
                    eye,
                    part,
                    Supervision.SCRUBBED,
                    factors,
                    endedAt,
                    ZoneId.of("Europe/London"),
                    secondEyeOf,
                    plannedOn);
        }
    }
}
