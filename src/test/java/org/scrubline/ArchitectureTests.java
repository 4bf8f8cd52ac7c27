package org.scrubline;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;

/** House rules a compiler does not know. A rule that matches no class fails by itself. */
@AnalyzeClasses(packages = "org.scrubline", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTests {

    @ArchTest
    static final ArchRule scoringIsPureJava = classes()
            .that()
            .resideInAPackage("org.scrubline.scoring..")
            .and()
            .doNotHaveSimpleName("package-info")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    "org.scrubline.scoring..",
                    "java..",
                    "org.apache.commons.statistics..",
                    "org.hipparchus..",
                    "org.jspecify..")
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule sqlLivesInStoresAndQueries = noClasses()
            .that()
            .haveSimpleNameNotEndingWith("Store")
            .and()
            .haveSimpleNameNotEndingWith("Queries")
            .and()
            .doNotHaveSimpleName("LoginThrottle")
            .and()
            .doNotHaveSimpleName("RuntimeRoleGuard")
            .should()
            .dependOnClassesThat()
            .areAssignableTo(JdbcClient.class);

    @ArchTest
    static final ArchRule storesAreNobodyElsesBusiness = classes()
            .that()
            .haveSimpleNameEndingWith("Store")
            .or()
            .haveSimpleNameEndingWith("Queries")
            .or()
            .haveSimpleNameEndingWith("Controller")
            .should()
            .bePackagePrivate();

    @ArchTest
    static final ArchRule controllersHoldNoTransaction =
            noClasses().that().haveSimpleNameEndingWith("Controller").should().beAnnotatedWith(Transactional.class);

    @ArchTest
    static final ArchRule storesHoldNoTransaction = methods()
            .that()
            .areDeclaredInClassesThat()
            .haveSimpleNameEndingWith("Store")
            .should()
            .notBeAnnotatedWith(Transactional.class);

    @ArchTest
    static final ArchRule timeComesFromTheClock = noClasses()
            .should()
            .callMethod(Instant.class, "now")
            .orShould()
            .callMethod(LocalDate.class, "now")
            .orShould()
            .callMethod(LocalDateTime.class, "now")
            .orShould()
            .callMethod(OffsetDateTime.class, "now")
            .orShould()
            .callMethod(ZonedDateTime.class, "now")
            .orShould()
            .callMethod(System.class, "currentTimeMillis");

    @ArchTest
    static final ArchRule onlyTheCommitteeWritesWhatATraineeMayDo = classes()
            .that()
            .haveFullyQualifiedName("org.scrubline.entitlement.EntitlementBook")
            .should()
            .onlyHaveDependentClassesThat()
            .resideInAnyPackage("org.scrubline.entitlement", "org.scrubline.committee");

    @ArchTest
    static final ArchRule notesForOneselfAreReadByTheirOwnPageAlone = classes()
            .that()
            .haveFullyQualifiedName("org.scrubline.casework.Reflections")
            .or()
            .haveFullyQualifiedName("org.scrubline.casework.Reflection")
            .should()
            .onlyHaveDependentClassesThat()
            .haveNameMatching("org\\.scrubline\\.casework\\.(web\\.)?(Stored)?Reflection.*");

    /** Their own pages and the demo; no curve, count, pack or decision. */
    @ArchTest
    static final ArchRule referenceCasesFeedNoNumberAboutATrainee = classes()
            .that()
            .resideInAPackage("org.scrubline.casework.reference")
            .should()
            .onlyHaveDependentClassesThat()
            .haveNameMatching("org\\.scrubline\\.casework\\.(reference\\.|web\\.)Reference.*"
                    + "|org\\.scrubline\\.casework\\.reference\\.Scored.*"
                    + "|org\\.scrubline\\.cohort\\.(web\\.)?Reference.*"
                    + "|org\\.scrubline\\.demo\\.Demo.*");

    /** The analyst's page and the person's own; no curve, signal, pack or decision. */
    @ArchTest
    static final ArchRule whatPeopleSaidAboutThemselvesFeedsNoNumberAboutThem = classes()
            .that()
            .haveFullyQualifiedName("org.scrubline.people.Characteristics")
            .should()
            .onlyHaveDependentClassesThat()
            .haveNameMatching("org\\.scrubline\\.people\\.(web\\.|Stored)Characteristics.*"
                    + "|org\\.scrubline\\.cohort\\.ReadEquality"
                    + "|org\\.scrubline\\.demo\\.Demo.*");
}
