package org.scrubline.people;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Role;

/** Reads and changes who belongs to the organisation of the current tenant scope. */
public interface People {

    Programme programme(UUID id);

    List<Programme> programmes();

    /** All sites, by name. */
    List<Site> sites();

    Optional<Site> site(UUID id);

    Optional<Person> person(UUID id);

    /** Everyone who holds the role in the programme now, by name. */
    List<Person> holding(UUID programmeId, Role role);

    /** Whether this person's account may sign at all; empty for somebody without one. */
    Optional<Signatory> signatory(UUID personId);

    /** Whether either has declared a conflict of interest about the other that still holds. */
    boolean inConflict(UUID onePerson, UUID otherPerson);

    /** Cases of a procedure the trainee declared from before joining; 0 when nothing was declared. */
    int priorExperience(UUID traineeId, String procedureCode);

    /** The same of all trainees who declared something. */
    Map<UUID, Integer> priorExperience(String procedureCode);

    /** The same as it was known at an instant. */
    Map<UUID, Integer> priorExperience(String procedureCode, Instant knownAt);

    Attempt<Programme> addProgramme(String name, String zone);

    Attempt<Site> addSite(String code, String name, String zone);

    /** Adds a person with an account of that log-in name and one role in one programme. */
    Attempt<NewPerson> addPerson(UUID programmeId, String printedName, String username, Role role);

    /** The same with an account several people use, which can prepare and read but never sign. */
    Attempt<NewPerson> addSharedLogIn(UUID programmeId, String printedName, String username, Role role);

    /** Adds a person with an account of that log-in name and no role, who can log in and sees nothing yet. */
    Attempt<NewPerson> addWithoutRole(String printedName, String username);

    /** Opens or closes a person's access. What they signed stays as it is. */
    void setActive(UUID personId, boolean active);

    /** Gives one more role. Giving one the person holds already changes nothing. */
    void grant(UUID programmeId, UUID personId, Role role);

    void declareConflict(UUID personId, UUID otherPersonId);

    void declarePriorExperience(UUID traineeId, String procedureCode, int cases);

    /**
     * What an account may do.
     *
     * @param open false once the account or the person was closed
     * @param shared used by several people, so that a signature of it would be nobody's
     */
    record Signatory(boolean open, boolean shared) {}

    /** A person just added, with the account to invite. */
    record NewPerson(UUID personId, UUID accountId) {}
}
