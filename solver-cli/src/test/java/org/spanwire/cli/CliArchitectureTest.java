package org.spanwire.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Holds the command line, tests included, to the library's public packages. */
@AnalyzeClasses(packages = "org.spanwire.cli")
class CliArchitectureTest {

  @ArchTest
  static final ArchRule usesTheLibraryAsItsUsersDo =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.spanwire.internal..", "org.spanwire.validation..");
}
