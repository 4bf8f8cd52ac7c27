package org.scrubline.support;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.platform.jobs.JobsNow;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.boot.webmvc.test.autoconfigure.MockMvcPrint;
import org.springframework.context.annotation.Import;

/**
 * The whole application on the shared test database. All such tests share one context; each makes its own organisation.
 * No job starts by itself: a test runs the one it is about.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@SpringBootTest(properties = {"spring.datasource.url=test", "scrubline.jobs.enabled=false"})
@AutoConfigureMockMvc(print = MockMvcPrint.NONE)
@Import({TestDatabase.class, TestOrganisations.class, History.class, JobsNow.class})
public @interface ScrublineTest {}
