package org.spanwire.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;

import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Holds the command line, tests included, to the library's public packages. */
@AnalyzeClasses(packages = "org.spanwire.cli")
class CliArchitectureTest {

  @ArchTest
  static final ArchRule commandsKnowOutput =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("entry")
          .definedBy("org.spanwire.cli")
          .layer("command")
          .definedBy("org.spanwire.cli.command..")
          .layer("output")
          .definedBy("org.spanwire.cli.output..")
          .whereLayer("command")
          .mayOnlyBeAccessedByLayers("entry")
          .whereLayer("output")
          .mayOnlyBeAccessedByLayers("command");

  @ArchTest
  static final ArchRule usesTheLibraryAsItsUsersDo =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.spanwire.internal..", "org.spanwire.validation..");
}
