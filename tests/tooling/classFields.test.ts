import { runInNewContext } from "node:vm";
import { expect, it } from "vitest";
import { withFieldsWrapped } from "../../src/tooling/classFields.ts";

it("wraps the values of class fields that look up a name, and no others", () => {
  expect(
    withFieldsWrapped(
      "class A{#a=new Map();b=1;static c=x;d=()=>y;e=[];f=-z;[k]=5;g;#h=!0;m(){return x}}",
    ),
  ).toBe(
    "class A{#a=(()=>(new Map()))();b=1;static c=(()=>(x))();d=()=>y;e=[];f=(()=>(-z))();[k]=5;g;#h=!0;m(){return x}}",
  );
});

it("leaves what is wrapped as it is, and what a class gives", () => {
  const code =
    "const n=3;class B{#list=Array.from({length:n},(_,i)=>class{#x=n+i;get x(){return this.#x}});get all(){return this.#list.map((C)=>new C().x)}};new B().all.join()";
  const wrapped = withFieldsWrapped(code);
  expect(wrapped).not.toBe(code);
  expect(withFieldsWrapped(wrapped)).toBe(wrapped);
  expect([code, wrapped].map((each) => runInNewContext(each))).toEqual(["3,4,5", "3,4,5"]);
});
